import { Canvas } from '@react-three/fiber';
import { type KeyboardEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { NeutralToneMapping, NoToneMapping, type WebGLRenderer } from 'three';
import { type FoldedCover, printer, toolingAreas } from '../../core/index.ts';
import type { CameraHandle } from './camera/CameraRig.tsx';
import { CAMERA } from './camera/framing.ts';
import { FirstFrame } from './FirstFrame.tsx';
import { FramePace } from './FramePace.tsx';
import { type SlicePlane, slicePlane } from './geometry/slicePlane.ts';
import { areaLabels } from './marks/areaLabels.ts';
import { FitMarkOverlay } from './marks/FitMarkOverlay.tsx';
import { marksOnCut } from './marks/marksOnCut.ts';
import { PictureTaker } from './PictureTaker.tsx';
import { SceneContents } from './SceneContents.tsx';
import { ShaderWait } from './ShaderWait.tsx';
import { Sharpness } from './Sharpness.tsx';
import { type CoverSceneProps, hasWebGl } from './sceneProps.ts';
import './scene.css';
import { Turntable } from './camera/Turntable.tsx';
import type { Slice } from './slice.ts';
import { useFoldedCover } from './useFoldedCover.ts';
import { useReliefs } from './useReliefs.ts';
import { VIEWPOINTS, type Viewpoint } from './viewpoints.ts';

const TURN_STEP = Math.PI / 18;
const ZOOM_STEP = 1.15;

/** Book and cover in 3D, to be turned by pointer, touch or keyboard. */
export default function CoverScene(props: CoverSceneProps) {
  const { look, onAbsence } = props;
  const { cover, lack } = useFoldedCover(props);
  const plane = useSlicePlane(cover, props.slice);
  const { reliefs, isPending, failure } = useReliefs(props.design);
  const { marked = true } = props;
  const marks = useMemo(() => {
    if (!marked) return [];
    return plane ? marksOnCut(cover.marks, plane.assembly) : cover.marks;
  }, [cover, plane, marked]);
  const { design, units, showsAreas = false } = props;
  const areas = useMemo(() => (showsAreas ? toolingAreas(design) : []), [showsAreas, design]);
  const labels = useMemo(() => areaLabels(cover, areas, printer(units)), [cover, areas, units]);
  const camera = useRef<CameraHandle>(null);
  const overlay = useRef<SVGSVGElement>(null);
  const [focused, setFocused] = useState(false);
  const [drawable] = useState(hasWebGl);
  const [readyCanvas, setReadyCanvas] = useState<string | null>(null);
  const [drawnCanvas, setDrawnCanvas] = useState<string | null>(null);
  const { generation, lost, watch } = useContextLoss();
  // Smoothed edges are fixed when a drawing context is made, so another look needs another canvas.
  const canvas = `${look} ${generation}`;
  const [isReady, isDrawn] = [readyCanvas === canvas, drawnCanvas === canvas];
  const absence = !drawable ? 'noWebGl' : lost ? 'contextLost' : isDrawn ? null : 'preparing';
  useLayoutEffect(() => onAbsence(absence), [absence, onAbsence]);
  if (!drawable) return null;

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = keyAction(event.key, camera.current, props.onViewpointChange);
    if (!act) return;
    event.preventDefault();
    act();
  };
  const full = look === 'full';
  return (
    <div
      className="cover-scene"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the keyboard
      tabIndex={0}
      role="application"
      aria-roledescription="3D view"
      aria-label={props.describe}
      aria-busy={!isDrawn || isPending}
      aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown + - Home 1 2 3 4 5 6 7 8"
      onKeyDown={onKeyDown}
      onFocus={() => setFocused(true)}
      onBlur={() => setFocused(false)}
    >
      <Canvas
        key={canvas}
        frameloop={isReady && !(props.filmed && isDrawn) ? 'demand' : 'never'}
        shadows={full ? 'percentage' : false}
        dpr={full ? [1, 2] : 1}
        gl={{ antialias: full, alpha: true, powerPreference: 'high-performance' }}
        camera={CAMERA}
        onCreated={({ gl }) => {
          gl.localClippingEnabled = true;
          // The neutral curve counts on reflections, and without them would darken and oversaturate.
          gl.toneMapping = full ? NeutralToneMapping : NoToneMapping;
          watch(gl);
        }}
      >
        <SceneContents
          {...props}
          cover={cover}
          plane={plane}
          marks={marks}
          reliefs={reliefs}
          areas={areas}
          areaLabels={labels}
          cameraRef={camera}
          overlay={overlay}
          wheelZooms={focused}
        >
          {full ? <FramePace onSlow={props.onSlowFrames} /> : <Sharpness />}
          {props.turning && <Turntable camera={camera} />}
          <ShaderWait onReady={() => setReadyCanvas(canvas)} />
        </SceneContents>
        {isReady && (
          <FirstFrame onDrawn={() => setDrawnCanvas(canvas)}>
            {/* Before its first frame the camera stands nowhere; a picture without the tooling would be one of another cover. */}
            {props.pictureRef && !isPending && (
              <PictureTaker ref={props.pictureRef} pose={props.pose} look={look} work={cover} />
            )}
          </FirstFrame>
        )}
      </Canvas>
      {(lack !== null || failure !== null) && (
        <p className="help cover-scene-lack">
          {lack} {failure !== null && `The tooling is not shown: ${failure}`}
        </p>
      )}
      {isReady && <FitMarkOverlay ref={overlay} marks={marks} areas={labels} formatLength={props.formatLength} />}
    </div>
  );
}

function useSlicePlane(cover: FoldedCover, slice: Slice | null): SlicePlane | null {
  const [axis, at] = [slice?.axis, slice?.at];
  return useMemo(
    () => (axis === undefined || at === undefined ? null : slicePlane(cover, { axis, at })),
    [cover, axis, at],
  );
}

/** What a key does to the view; null for any other key. */
function keyAction(
  key: string,
  camera: CameraHandle | null,
  choose: (viewpoint: Viewpoint) => void,
): (() => void) | null {
  const viewpoint = VIEWPOINTS[Number(key) - 1];
  if (viewpoint) return () => choose(viewpoint);
  switch (key) {
    case 'ArrowLeft':
      return () => camera?.turn(-TURN_STEP, 0);
    case 'ArrowRight':
      return () => camera?.turn(TURN_STEP, 0);
    case 'ArrowUp':
      return () => camera?.turn(0, -TURN_STEP);
    case 'ArrowDown':
      return () => camera?.turn(0, TURN_STEP);
    case '+':
    case '=':
      return () => camera?.zoom(1 / ZOOM_STEP);
    case '-':
      return () => camera?.zoom(ZOOM_STEP);
    case 'Home':
      return () => camera?.home();
    default:
      return null;
  }
}

/** Watches for a lost drawing context, and starts a new canvas when it is restored. */
function useContextLoss() {
  const [generation, setGeneration] = useState(0);
  const [lost, setLost] = useState(false);
  const watch = ({ domElement }: WebGLRenderer): void => {
    domElement.addEventListener('webglcontextlost', (event) => {
      // A canvas that has left the page loses its context on purpose.
      if (!domElement.isConnected) return;
      event.preventDefault();
      setLost(true);
    });
    domElement.addEventListener('webglcontextrestored', () => {
      setLost(false);
      setGeneration((n) => n + 1);
    });
  };
  return { generation, lost, watch };
}
