/** Hands a file to the person’s own folder. */
export const saveFile = (name: string, type: string, content: BlobPart): void => {
  const url = URL.createObjectURL(new Blob([content], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  URL.revokeObjectURL(url)
}
