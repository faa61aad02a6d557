/** How far something is: a word for it, and a bar. `told` says the same in words. */
export const Progress = ({
  word,
  done,
  of,
  told,
}: {
  readonly word: string
  readonly done: number
  readonly of: number
  readonly told?: string
}) => {
  const percent = Math.round((100 * done) / Math.max(1, of))
  return (
    <div class="tight">
      <p role="status">{word} …</p>
      <div
        class="progress"
        role="progressbar"
        aria-label={word}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent}
        aria-valuetext={told}
      >
        <span style={{ width: `${percent}%` }} />
      </div>
    </div>
  )
}
