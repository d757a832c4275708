import { WORDS } from '../../core/index.ts';
import { TermMeaning } from './Term.tsx';
import './term.css';

/** Every term of the page in the order of the alphabet, each with its meaning on this book's own cover. */
export default function Vocabulary() {
  return (
    <section className="words-place" aria-labelledby="words-title">
      <h2 id="words-title">Words</h2>
      <ul className="vocabulary">
        {WORDS.map((word) => (
          <li key={word} id={`word-${word.replaceAll(' ', '-')}`}>
            <TermMeaning word={word} />
          </li>
        ))}
      </ul>
    </section>
  );
}
