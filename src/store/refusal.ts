/** Why the workbook does not start or a command does not run: one sentence for the person at the keyboard. */
export class Refusal extends Error {}
