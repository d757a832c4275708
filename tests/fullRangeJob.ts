import fc from 'fast-check';

/** A number anywhere in its range, and every third time at one end of it. */
const within = (min: number, max: number) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.double({ min, max, noNaN: true, noDefaultInfinity: true }) },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
  );

const leatherPiece = fc
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

/** Jobs over the whole range of every field that the fold model reads, ends included; rules between fields are kept. */
export const fullRangeDocument = fc
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
    outside: leatherPiece,
    pocket: fc.option(leatherPiece, { nil: undefined }),
    lining: fc.option(leatherPiece, { nil: null }),
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
