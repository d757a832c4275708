import type { RoomPicture } from '../../output/customerSheet/roomPicture.ts';
import '../sheet/sheet.css';

/** The edge of a board in its pocket, enlarged and to scale, with what each colour is. */
export function RoomDrawing({ picture }: { readonly picture: RoomPicture }) {
  const { low, high } = picture.box;
  return (
    <figure className="room-drawing">
      <svg
        className="section-layers"
        viewBox={`${low[0]} ${-high[1]} ${high[0] - low[0]} ${high[1] - low[1]}`}
        aria-hidden="true"
      >
        {picture.shapes.map(({ kind, outline }) => (
          <path
            key={kind}
            className={kind}
            data-kind={kind}
            d={`M${outline.map(([u, v]) => `${u} ${-v}`).join('L')}Z`}
          />
        ))}
      </svg>
      <figcaption>
        <p>{picture.words}</p>
        <ul className="section-layers">
          {picture.key.map(({ kind, words }) => (
            <li key={kind}>
              <svg viewBox="0 0 10 10" aria-hidden="true">
                <path className={kind} data-kind={kind} d="M0 0H10V10H0Z" />
              </svg>
              {words}
            </li>
          ))}
        </ul>
      </figcaption>
    </figure>
  );
}
