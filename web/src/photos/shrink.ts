import type { PhotoBytes } from './photo-store.ts'

/** A photo as it is kept: smaller than it was taken, upright, and without what the camera wrote beside it. */
export type Shrunk = {
  readonly file: PhotoBytes
  readonly thumb: PhotoBytes
  readonly widthPx: number
  readonly heightPx: number
}

const LONG_SIDE_PX = 1600
const THUMB_SIDE_PX = 320

/** The size of a picture made no longer than this on its longer side; a small one stays as it is. */
export const sizeWithin = (
  widthPx: number,
  heightPx: number,
  longSidePx: number,
): { readonly widthPx: number; readonly heightPx: number } => {
  const share = Math.min(1, longSidePx / Math.max(widthPx, heightPx))
  return {
    widthPx: Math.max(1, Math.round(widthPx * share)),
    heightPx: Math.max(1, Math.round(heightPx * share)),
  }
}

const jpegOf = async (picture: ImageBitmap, longSidePx: number, quality: number): Promise<PhotoBytes> => {
  const { widthPx, heightPx } = sizeWithin(picture.width, picture.height, longSidePx)
  const canvas = document.createElement('canvas')
  canvas.width = widthPx
  canvas.height = heightPx
  const paper = canvas.getContext('2d')
  if (paper === null) throw new Error('this browser gave no canvas')
  // JPEG knows no transparency: what is clear in a PNG becomes white, not black.
  paper.fillStyle = '#fff'
  paper.fillRect(0, 0, widthPx, heightPx)
  paper.imageSmoothingQuality = 'high'
  paper.drawImage(picture, 0, 0, widthPx, heightPx)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
  // A phone short of memory gives nothing.
  if (blob === null) throw new Error('the picture could not be written')
  return new Uint8Array(await blob.arrayBuffer())
}

/** The thumbnail of a photo. */
export const thumbOf = async (file: PhotoBytes): Promise<PhotoBytes> => {
  const picture = await createImageBitmap(new Blob([file]))
  try {
    return await jpegOf(picture, THUMB_SIDE_PX, 0.7)
  } finally {
    picture.close()
  }
}

/**
 * Makes a picture small enough to keep and send. It is drawn anew, so where it was taken and with which phone is not in it any more; the
 * browser turns it upright. Rejects where the browser can’t read it.
 */
export const shrink = async (picked: Blob): Promise<Shrunk> => {
  const picture = await createImageBitmap(picked, { imageOrientation: 'from-image' })
  try {
    const file = await jpegOf(picture, LONG_SIDE_PX, 0.82)
    const thumb = await jpegOf(picture, THUMB_SIDE_PX, 0.7)
    return { file, thumb, ...sizeWithin(picture.width, picture.height, LONG_SIDE_PX) }
  } finally {
    picture.close()
  }
}
