interface CardMoreProps<Action extends string> {
  /** Of what it is done with. */
  readonly name: string;
  readonly actions: readonly { readonly action: Action; readonly word: string }[];
  readonly act: (action: Action) => void;
}

/** What is done less often with something that is kept. */
export function CardMore<Action extends string>({ name, actions, act }: CardMoreProps<Action>) {
  const of = <span className="only-heard"> {name}</span>;
  return (
    <details className="card-more">
      <summary>More{of}</summary>
      <ul>
        {actions.map(({ action, word }) => (
          <li key={action}>
            <button
              type="button"
              onClick={({ currentTarget }) => {
                currentTarget.closest('details')!.open = false;
                act(action);
              }}
            >
              {word}
              {of}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
