import fc from 'fast-check';

type Within = (min: number, max: number) => fc.Arbitrary<number>;

/** A number anywhere in its range, small ones as often as large ones, and every third time at one end of it. */
const withinOrAtEnd: Within = (min, max) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.double({ min, max, noNaN: true, noDefaultInfinity: true }) },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
  );

/** A number with the same chance everywhere in its range. */
const evenly: Within = (min, max) =>
  fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((draw) => min + ((max - min) * draw) / 1_000_000);

const leatherPiece = (within: Within) =>
  fc
    .record({
      a: within(0.2, 8),
      b: within(0.2, 8),
      neutral: within(0.4, 0.8),
      bendRatio: within(0.02, 3),
      modulus_MPa: within(20, 200),
      creaseSet: within(0, 1),
      friction: within(0, 1.5),
      density_kg_m3: within(300, 1500),
      skived: fc.option(within(0, 1), { nil: null }),
    })
    .map(({ a, b, skived, ...rest }) => ({
      ...rest,
      min_mm: Math.min(a, b),
      max_mm: Math.max(a, b),
      foldThickness_mm: skived === null ? null : 0.2 + skived * (Math.max(a, b) - 0.2),
    }));

/** Jobs over the whole range of every field that the fold model reads; rules between fields are kept. */
const documentWithin = (within: Within) =>
  fc
    .record({
      kind: fc.constantFrom('hardback', 'paperback', 'limp'),
      width: within(30, 1000),
      height: within(30, 1500),
      thickness: within(1, 300),
      wedge: within(-1, 1),
      board: within(0.1, 12),
      square: within(0, 1),
      rise: fc.option(within(0, 1), { nil: 0 }),
      edge: fc.option(within(0, 1), { nil: 0 }),
      jointDip: within(0, 20),
      foldBack: within(0, 180),
      pageGive: within(0, 0.9),
      openFlat: fc.option(within(20, 3000), { nil: null }),
      outside: leatherPiece(within),
      pocket: fc.option(leatherPiece(within), { nil: undefined }),
      lining: fc.option(leatherPiece(within), { nil: null }),
      margin: within(1, 30),
      construction: fc.constantFrom('separate', 'turned'),
      depth: fc.option(within(5, 1000), { nil: null }),
      hold: within(5, 300),
      seating: fc.constantFrom('centred', 'front', 'back', 'spine'),
      ease: within(0, 20),
      outsideWidth: fc.option(within(40, 4000), { nil: null }),
      outsideHeight: fc.option(within(30, 2000), { nil: null }),
    })
    .map((draw) => {
      const fore = Math.max(1, Math.min(300, draw.thickness + draw.wedge * draw.width));
      const rise = Math.min(150, (draw.rise * draw.thickness) / 2);
      return {
        format: 'coverwright-job',
        version: 1,
        book: {
          kind: draw.kind,
          width_mm: draw.width,
          height_mm: draw.height,
          thickness_mm: draw.thickness,
          foreEdgeThickness_mm: fore,
          boardThickness_mm: Math.min(draw.board, 0.49 * Math.min(draw.thickness, fore)),
          square_mm: Math.min(25, (draw.square * Math.min(draw.width, draw.height)) / 4),
          spine: { shape: rise > 0 ? 'rounded' : 'flat', rise_mm: rise },
          cornerRadius_mm: Math.min(60, (draw.edge * draw.thickness) / 2),
          jointDip_mm: draw.jointDip,
          foldBack_deg: draw.foldBack,
          pageGive: draw.pageGive,
          measured: { openFlatWidth_mm: draw.openFlat },
        },
        leather: { outside: draw.outside, pocket: draw.pocket, lining: draw.lining },
        seam: { edgeMargin_mm: draw.margin },
        pockets: { construction: draw.construction, depth_mm: draw.depth, hold_mm: draw.hold },
        seating: draw.seating,
        ease: { foreEdge_mm: draw.ease },
        pattern: { outsideWidth_mm: draw.outsideWidth, outsideHeight_mm: draw.outsideHeight },
      };
    });

/** Such jobs with one field in three at an end of its range. */
export const fullRangeDocument = documentWithin(withinOrAtEnd);

/** Such jobs drawn evenly. */
export const evenRangeDocument = documentWithin(evenly);
