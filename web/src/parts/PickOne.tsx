/** One of a few things, each a button as wide as the page. */
export const PickOne = (props: {
  readonly options: readonly { readonly id: string; readonly name: string }[]
  readonly onPick: (id: string) => void
}) => (
  <ul class="tight">
    {props.options.map(({ id, name }) => (
      <li key={id}>
        <button type="button" class="whole" onClick={() => props.onPick(id)}>
          {name}
        </button>
      </li>
    ))}
  </ul>
)
