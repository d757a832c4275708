interface HideProps {
  /** Of the grain side. */
  readonly colour: string;
  readonly surface: 'matt' | 'satin' | 'glossy';
}

/** How much light the grain throws back in the picture, as a share. */
const SHINE = { matt: 0, satin: 0.16, glossy: 0.34 } as const;

/** A hide seen from its grain side, in its colour. */
export function Hide({ colour, surface }: HideProps) {
  return (
    <svg className="skin-picture" viewBox="0 0 120 84" aria-hidden="true">
      <path className="skin" d={OUTLINE} fill={colour} />
      <path className="skin-shine" d="M30 30Q58 16 92 30Q60 24 30 30Z" opacity={SHINE[surface]} />
      <path className="skin-backbone" d="M16 42H104" />
    </svg>
  );
}

/** The neck at the left, the legs at the corners, the tail at the right. */
const OUTLINE =
  'M6 36Q14 32 20 27Q17 15 25 5Q31 3 34 9Q35 17 43 18Q60 15 78 18Q85 17 88 9Q92 3 98 6Q105 16 101 27Q105 34 115 40Q116 42 115 44Q105 50 101 57Q105 68 98 78Q92 81 88 75Q85 67 78 66Q60 69 43 66Q35 67 34 75Q31 81 25 79Q17 69 20 57Q14 52 6 48Q3 42 6 36Z';
