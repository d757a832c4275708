import './sheet.css';

/** Hatch patterns of all drawings, by what they mean. Rendered once for the whole page; drawings refer to `url(#hatch-gap)`. */
export default function Hatches() {
  return (
    <svg className="hatches" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="hatch-gap" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" className="hatch-gap" />
        </pattern>
        <pattern id="hatch-overrun" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V4M0 0H4" className="hatch-overrun" />
        </pattern>
        <pattern id="hatch-fold" width="3" height="3" patternUnits="userSpaceOnUse">
          <path d="M1.5 0V3" className="hatch-fold" />
        </pattern>
        <pattern id="hatch-seat" width="4" height="4" patternUnits="userSpaceOnUse">
          <circle cx="1" cy="1" r="0.7" className="hatch-seat" />
          <circle cx="3" cy="3" r="0.7" className="hatch-seat" />
        </pattern>
      </defs>
    </svg>
  );
}
