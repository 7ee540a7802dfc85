/** An error as the program answers it. */
export class HostError extends Error {
  override readonly name = 'RichApi.Error';
  constructor(
    readonly code: string,
    message: string = code,
  ) {
    super(message);
  }
}
