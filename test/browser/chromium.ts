import { mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** As root there is no sandbox to be had; everything else is as people browse, web security included. */
const args = ['--no-sandbox', '--font-render-hinting=none'];

/** A real Chromium: the one CHROMIUM_PATH names, else the one that comes with the packages (Linux x64). */
export const openBrowser = async (): Promise<Browser> => {
  const { CHROMIUM_PATH } = process.env;
  if (CHROMIUM_PATH) return chromium.launch({ args, executablePath: CHROMIUM_PATH });
  unpackInto(process.env.CHROMIUM_FOLDER ?? join(tmpdir(), `workbook-chromium-${process.getuid?.()}`));
  const { default: packed } = await import('@sparticuz/chromium');
  return chromium.launch({ args, executablePath: await packed.executablePath() });
};

/** The package reads these when it loads: where to unpack, and that it brings its own system libraries. */
const unpackInto = (folder: string): void => {
  const config = join(folder, 'fontconfig');
  mkdirSync(config, { recursive: true, mode: 0o700 });
  // Its own font list names folders that are elsewhere here, and a text field without any font ends the page.
  const folders = [join(folder, 'fonts'), '/usr/share/fonts'].map((dir) => `<dir>${dir}</dir>`).join('');
  writeFileSync(
    join(config, 'fonts.conf'),
    `<fontconfig>${folders}<cachedir>${config}</cachedir></fontconfig>\n`,
  );
  Object.assign(process.env, {
    TMPDIR: folder,
    FONTCONFIG_PATH: config,
    AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x',
  });
};
