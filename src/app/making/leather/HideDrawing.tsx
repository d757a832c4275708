import { useState } from 'react';
import { hideOf, type JobDocument, type LeatherName, polygonArea, type Vec2 } from '../../../core/index.ts';
import { useWritten } from '../../fields/fieldState.ts';
import { useWidth } from '../../sheet/useExtent.ts';
import { useBench, useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { MOVE_STEP } from '../tooling/snapping.ts';
import { HideActs } from './HideActs.tsx';
import { HideDraftButtons } from './HideDraftButtons.tsx';
import { HidePictureFields } from './HidePictureFields.tsx';
import { HideSaid } from './HideSaid.tsx';
import { HideSurface } from './HideSurface.tsx';
import { closed, type HideDraft, STRAY_PX, shapeFault } from './hideDraft.ts';
import { backbonePatches, shapePatches, wholePatches } from './hidePatches.ts';
import type { ShapeName } from './hideShape.ts';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { seenAt, withPoints } from './pictureScale.ts';
import { fittedView, gridStep, type SurfaceView } from './surfaceView.ts';
import { useHideDraft } from './useHideDraft.ts';
import { type Chosen, type HandShape, useHideHand } from './useHideHand.ts';
import { useHidePicture } from './useHidePicture.ts';

/** Height of the surface over its width, and within what, px. */
const SHAPE = { share: 0.72, least: 320, most: 540, ofScreen: 0.65 } as const;

/** What is shown of an empty surface, mm. */
const EMPTY: readonly Vec2[] = [
  [0, 0],
  [1000, 700],
];

/** The piece of one leather drawn by hand: its outline and its defects, over a grid or a picture of it. */
export function HideDrawing({ leather }: { readonly leather: LeatherName }) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const path = `hides.${leather}` as const;
  const of = useBench(({ history }) => `${history.key} ${leather}`);
  const written = (useWritten(path) ?? null) as JobDocument | null;
  const good = useBench(({ history }) => history.good.job.hides[leather]);
  const { draft, setDraft, back } = useHideDraft(of);
  const { picture, putPicture, addPicture } = useHidePicture(of);
  const [isScaling, setScaling] = useState(picture !== null && !picture.isScaled);
  const [wish, choose] = useState<Chosen | null>(null);
  const [zoomed, setView] = useState<SurfaceView | null>(null);
  const [ref, width] = useWidth<HTMLDivElement>();
  const step = MOVE_STEP[lengths.units];

  const outline = (written?.outline as readonly Vec2[] | undefined) ?? (good === null ? null : hideOf(good).outline);
  const defects = (written?.defects ?? []) as readonly (readonly Vec2[])[];
  const inHide = { leather, isWritten: written !== null, defects };
  const inJob: HandShape[] = [
    ...(outline === null || written === null ? [] : [{ name: 'outline' as const, corners: outline }]),
    ...defects.map((corners, i) => ({ name: i, corners })),
  ];
  const drawing = draft !== null && !draft.isClosed ? draft : null;
  const fault = draft?.isClosed === true ? shapeFault(draft.corners) : null;
  const shapes: HandShape[] =
    isScaling && picture !== null
      ? [{ name: 'scale', corners: picture.points }]
      : draft === null
        ? inJob
        : [...inJob.filter(({ name }) => name !== draft.name), ...(draft.isClosed ? [draft] : [])];
  const forced: ShapeName | null =
    isScaling && picture !== null ? 'scale' : draft?.isClosed === true ? draft.name : null;
  const hasWish =
    wish !== null && (forced === null ? shapes.some(({ name }) => name === wish.name) : wish.name === forced);
  const chosen: Chosen | null = hasWish ? wish : forced === null ? null : { name: forced, corner: null };

  // Fitted once, and again when asked to: what is drawn does not run away under the hand.
  const [fitted, setFitted] = useState<readonly Vec2[]>(() => contentOf(inJob, picture));
  const size = {
    width,
    height: Math.round(
      Math.max(SHAPE.least, Math.min(SHAPE.most, SHAPE.share * width, SHAPE.ofScreen * window.innerHeight)),
    ),
  };
  const view = zoomed ?? fittedView(fitted, size);
  const showAll = (of = contentOf(draft === null ? inJob : [...inJob, draft], picture)): void => {
    setFitted(of);
    setView(null);
  };

  const put = (name: ShapeName, corners: readonly Vec2[], key?: string): void => {
    if (name === 'scale') putPicture(withPoints(picture!, [corners[0]!, corners[1]!], view.scale));
    else if (shapeFault(corners) !== null) setDraft({ name, corners, isClosed: true });
    else {
      setDraft(null);
      dispatch({
        type: 'edit',
        key: draft === null ? key && `${path} ${key}` : undefined,
        patches: shapePatches(inHide, name, corners),
      });
    }
  };
  const setDrawing = (next: HideDraft): void => {
    if (next.isClosed) {
      put(next.name, next.corners);
      choose({ name: next.name, corner: null });
    } else setDraft(next);
  };
  const takeOut = (): void => {
    if (chosen === null || chosen.name === 'scale') return;
    const corners = shapes.find(({ name }) => name === chosen.name)?.corners ?? [];
    if (chosen.corner !== null) {
      if (corners.length <= 3) return;
      put(chosen.name, corners.toSpliced(chosen.corner, 1));
      choose({ name: chosen.name, corner: Math.max(0, chosen.corner - 1) });
    } else if (typeof chosen.name === 'number') {
      setDraft(null);
      if (chosen.name < defects.length) dispatch({ type: 'edit', patches: shapePatches(inHide, chosen.name, null) });
      choose(null);
    }
  };
  const begin = (name: ShapeName): void => {
    setScaling(false);
    setDraft({ name, corners: [], isClosed: false });
    choose(null);
  };

  const hand = useHideHand({
    view,
    size,
    setView: (next) => (next === null ? showAll() : setView(next)),
    shapes,
    drawing,
    setDrawing,
    chosen,
    choose,
    put,
    takeOut,
    step,
  });
  const { held } = hand;
  const shown =
    held?.kind === 'shape' ? shapes.map((shape) => (shape.name === held.shape.name ? held.shape : shape)) : shapes;
  const live = shown.find(({ name }) => name === draft?.name)?.corners ?? draft?.corners;
  const heldFault = held?.kind === 'shape' && held.shape.name !== 'scale' ? shapeFault(held.shape.corners) : fault;
  const meeting =
    heldFault?.kind === 'meet'
      ? { corners: held?.kind === 'shape' ? held.shape.corners : live!, sides: heldFault.sides }
      : null;
  const hide = shown.find(({ name }) => name === 'outline');
  const corner = held?.kind === 'shape' ? held.corner : (chosen?.corner ?? null);
  const inHand = shown.find(({ name }) => name === chosen?.name);
  const isUnscaled = picture !== null && !picture.isScaled;
  const title = LEATHER_TITLES[leather];
  return (
    <section className="hide-drawing not-printed" aria-label={`${title}, drawn by hand`}>
      <h3>{title}, drawn by hand</h3>
      <HideDraftButtons
        draft={draft}
        isOutlined={written !== null}
        defects={defects.length}
        isUnscaled={isUnscaled}
        begin={begin}
        close={(open) => setDrawing(closed(open))}
        back={back}
        giveUp={() => setDraft(null)}
      />
      <HideSaid
        draft={draft}
        fault={fault}
        chosen={chosen}
        inHand={inHand}
        corner={corner}
        isEmpty={shapes.length === 0}
      />
      <div ref={ref}>
        <svg
          ref={hand.surface}
          className="drawing hide-surface"
          data-held={zoomed !== null || drawing !== null || undefined}
          data-drawing={drawing !== null || undefined}
          viewBox={`0 0 ${size.width} ${size.height}`}
          style={{ blockSize: size.height }}
          role="application"
          aria-label={`${title}: outline and defects. Page Up and Page Down choose a corner, arrow keys move it, with Shift ten steps. Enter adds a corner, Delete takes it out.`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it is worked by keys, as its label says
          tabIndex={0}
          fontSize={12}
          onPointerDown={hand.down}
          onPointerMove={hand.move}
          onPointerUp={hand.up}
          onPointerCancel={hand.cancel}
          onKeyDown={hand.press}
          onBlur={() => dispatch({ type: 'settle' })}
        >
          <HideSurface
            view={view}
            size={size}
            units={lengths.units}
            picture={picture}
            shapes={shown}
            chosen={chosen}
            corner={corner}
            drawing={drawing}
            line={held?.kind === 'line' ? held.line : null}
            meeting={meeting}
          />
        </svg>
      </div>
      <HideActs
        hand={hand}
        drawing={drawing}
        chosen={chosen}
        inHand={inHand}
        isEmpty={shapes.length === 0}
        showAll={() => showAll()}
        takeOut={takeOut}
      />
      <p className="help">
        A square of the grid is {lengths.size(gridStep(view.scale, lengths.units))}.
        {hide !== undefined &&
          heldFault === null &&
          ` The leather is ${lengths.area(polygonArea(hide.corners))} in all.`}
        {drawing !== null && ` A line drawn at this size is kept to ${lengths.length(STRAY_PX / view.scale)}.`} Seen
        from the flesh side.
        {isUnscaled && ' Scale the picture before you draw over it.'}
      </p>
      <HidePictureFields
        picture={picture}
        put={(next) => {
          putPicture(next);
          if (next === null) setScaling(false);
          else showAll(contentOf(inJob, next));
        }}
        add={(opened) => {
          const added = addPicture(opened, outline);
          setScaling(!added.isScaled);
          choose(added.isScaled ? null : { name: 'scale', corner: null });
          showAll(contentOf(inJob, added));
        }}
        takeSeen={({ outline: seen, defects: spots }) => {
          setDraft(null);
          const onHide = (seenCorners: readonly Vec2[]): readonly Vec2[] => seenAt(seenCorners, picture!.mm);
          dispatch({ type: 'edit', patches: wholePatches(inHide, onHide(seen), spots.map(onHide)) });
          choose({ name: 'outline', corner: null });
        }}
        layBackbone={() => dispatch({ type: 'edit', patches: backbonePatches(inHide, picture!.points) })}
        isScaling={isScaling}
        setScaling={(next) => {
          setScaling(next);
          choose(next ? { name: 'scale', corner: null } : null);
        }}
      />
    </section>
  );
}

/** What is to be seen: every corner, and the picture. */
function contentOf(
  shapes: readonly { readonly corners: readonly Vec2[] }[],
  picture: { readonly width: number; readonly height: number; readonly mm: number } | null,
): readonly Vec2[] {
  const corners = shapes.flatMap((shape) => shape.corners);
  const far: Vec2[] =
    picture === null
      ? []
      : [
          [0, 0],
          [picture.width * picture.mm, picture.height * picture.mm],
        ];
  return corners.length + far.length === 0 ? EMPTY : [...corners, ...far];
}
