/** How much of a file is here. */
export type BlobState = { readonly received: number; readonly whole: boolean }

/** What a piece that begins at `offset` adds to a file; null when something is missing between. */
export const newPart = (
  { received, whole }: BlobState,
  offset: number,
  piece: Uint8Array,
): Uint8Array | null => {
  if (whole) return new Uint8Array(0)
  return offset > received ? null : piece.subarray(received - offset)
}

/**
 * Where photos are kept: files by course and by the SHA-256 of what is in them, so one never changes. They come in pieces, in order;
 * a piece that is kept once is not sent again. Every adapter passes the suite in `acceptance.ts`.
 */
export type BlobStore = {
  readonly state: (course: string, sha256: string) => Promise<BlobState>
  /**
   * Keeps of a piece that begins at `offset` what is not here yet, so one that comes again, or overlaps, costs nothing. False when it begins
   * behind the end of what is here: something is missing between.
   */
  readonly append: (course: string, sha256: string, offset: number, piece: Uint8Array) => Promise<boolean>
  /** Makes a file whole once all its pieces are here: durable when this resolves to true. False when its hash differs; then it is dropped. */
  readonly finish: (course: string, sha256: string) => Promise<boolean>
  /** Bytes `from` to `to` (not included) of a whole file; null where it is not here. */
  readonly read: (course: string, sha256: string, from: number, to: number) => Promise<Uint8Array | null>
}
