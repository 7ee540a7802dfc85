/** Why a file is not opened, in a plain sentence that names it; nothing of it has been taken over. */
export class FileRefused extends Error {
  override readonly name = 'FileRefused';
}
