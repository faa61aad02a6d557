/** How much of a file is here. */
export type BlobState = { readonly received: number; readonly whole: boolean }

/**
 * Where photos are kept: files by course and by the SHA-256 of what is in them, so one never changes. They come in pieces, in order;
 * a piece that is kept once is not sent again. Every adapter passes the suite in `acceptance.ts`.
 */
export type BlobStore = {
  readonly state: (course: string, sha256: string) => Promise<BlobState>
  /** Adds a piece; false when the file is whole already, or does not stand at `offset` (somebody else was quicker). */
  readonly append: (course: string, sha256: string, offset: number, piece: Uint8Array) => Promise<boolean>
  /** Makes a file whole once all its pieces are here: durable when this resolves to true. False when its hash differs; then it is dropped. */
  readonly finish: (course: string, sha256: string) => Promise<boolean>
  /** Bytes `from` to `to` (not included) of a whole file; null where it is not here. */
  readonly read: (course: string, sha256: string, from: number, to: number) => Promise<Uint8Array | null>
}
