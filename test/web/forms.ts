/** What a browser would send for a form of a page: the first one, or the one with this action. */
export const fieldsOf = (page: string, action?: string): Record<string, string | string[]> => {
  const sent: Record<string, string[]> = {};
  const add = (name: string, value: string) => {
    sent[name] = [...(sent[name] ?? []), value];
  };
  const tags = /<(input)\b([^>]*)>|<(select|textarea)\b([^>]*)>([\s\S]*?)<\/\3>/g;
  for (const [, input, alone = '', tag = input, around = alone, inside = ''] of formIn(page, action).matchAll(
    tags,
  )) {
    const { name, type, value = '', checked } = attributes(around);
    if (name === undefined || type === 'file') continue;
    if (tag === 'textarea') add(name, plain(inside.replace(/^\n/, '')));
    else if (tag === 'select') add(name, chosen(inside));
    else if (!['radio', 'checkbox'].includes(type ?? '') || checked !== undefined) add(name, value);
  }
  return Object.fromEntries(
    Object.entries(sent).map(([name, all]) => [name, all.length === 1 ? all[0]! : all]),
  );
};

const formIn = (page: string, action: string | undefined): string => {
  const forms = page.match(/<form\b[\s\S]*?<\/form>/g) ?? [];
  const wanted = action === undefined ? 'method="post"' : `action="${action}"`;
  const form = forms.find((one) => one.slice(0, one.indexOf('>')).includes(wanted));
  if (!form) throw new Error(`there is no form ${wanted} on this page`);
  return form;
};

const attributes = (tag: string): Record<string, string> =>
  Object.fromEntries(
    [...tag.matchAll(/([\w-]+)(?:="([^"]*)")?/g)].map(([, name, value = '']) => [name!, plain(value)]),
  );

const chosen = (options: string): string => {
  const all = options.match(/<option\b[^>]*>/g) ?? [];
  return attributes(all.find((option) => /\bselected\b/.test(option)) ?? all[0] ?? '').value ?? '';
};

const plain = (text: string): string =>
  text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
