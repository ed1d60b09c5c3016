/** A request as the log has it: the path without its query, for what one looks for may be a guest's name. */
export const loggedRequest = (request: { method: string; url: string }) => ({
  method: request.method,
  path: request.url.split('?')[0],
});

/** An error as the log has it: without what a database adds to it, for that may be a whole row with its names. */
export const loggedError = ({ name, message, stack, code }: Error & { code?: string }) => ({
  type: name,
  code,
  message,
  stack: stack ?? '',
});
