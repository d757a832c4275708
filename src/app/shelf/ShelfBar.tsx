import type { ReactNode } from 'react';

interface ShelfBarProps<Order extends string> {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly search: (text: string) => void;
  /** What can be searched for. */
  readonly placeholder: string;
  readonly orders: readonly { readonly value: Order; readonly word: string }[];
  readonly order: Order;
  readonly setOrder: (order: Order) => void;
  /** How many there are, or that they are being read. */
  readonly said: string;
  /** What else can be done here. */
  readonly children?: ReactNode;
}

/** The head of a place where records stand: its title, a search and their order. */
export function ShelfBar<Order extends string>(props: ShelfBarProps<Order>) {
  const { id, title, text, search, placeholder, orders, order, setOrder, said, children } = props;
  return (
    <header className="row">
      <h2 id={id}>{title}</h2>
      {children}
      <label className="bar-word">
        Search{' '}
        <input
          type="text"
          autoComplete="off"
          value={text}
          placeholder={placeholder}
          onChange={(event) => search(event.target.value)}
        />
      </label>
      <fieldset className="row" aria-label="Order">
        {orders.map(({ value, word }) => (
          <button key={value} type="button" aria-pressed={value === order} onClick={() => setOrder(value)}>
            {word}
          </button>
        ))}
      </fieldset>
      <p className="bar-word" role="status">
        {said}
      </p>
    </header>
  );
}
