interface ShowMoreProps {
  /** How many are not shown. */
  readonly rest: number;
  /** How many a press shows. */
  readonly page: number;
  readonly show: () => void;
}

/** Shows the next of a long list; nothing where all are shown. */
export const ShowMore = ({ rest, page, show }: ShowMoreProps) =>
  rest > 0 && (
    <p>
      <button type="button" onClick={show}>
        Show {Math.min(page, rest)} more
      </button>
    </p>
  );
