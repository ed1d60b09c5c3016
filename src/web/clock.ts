import { localTime } from '../core/calendar.js';

/** The instant it is; the only way the time of day gets into the workbook's pages. */
export type Clock = () => Date;

/** The day and time of an instant on a kitchen's clock. */
export const inZone = (instant: Date, timeZone: string): { date: string; time: string } =>
  localTime(instant.getTime(), timeZone);
