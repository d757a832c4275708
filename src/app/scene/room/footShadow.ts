import {
  type Box3,
  CustomBlending,
  DoubleSide,
  LinearMipmapLinearFilter,
  MaxEquation,
  OneFactor,
  OrthographicCamera,
  type Scene,
  ShaderMaterial,
  type Texture,
  Vector3,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { behindCut, type SlicePlane } from '../geometry/slicePlane.ts';

/** How high above the bench a surface still darkens it, mm, and the margin drawn round the work. */
const REACH = 40;
const MARGIN = 40;

/** Contact shadow of the work on the bench: 1 where it touches, 0 from `REACH` up. */
export interface FootShadow {
  readonly texture: Texture;
  /** Part of the bench that it covers: least x and z, size in x and z, mm. */
  readonly area: [x: number, z: number, width: number, depth: number];
  draw(renderer: WebGLRenderer, scene: Scene, bounds: Box3, cut: SlicePlane | null): void;
  dispose(): void;
}

/** Draws how near the work is, seen from under the bench. Shaders read its smaller mip levels, which blurs it. */
export function footShadow(): FootShadow {
  const target = new WebGLRenderTarget(256, 256, { generateMipmaps: true, minFilter: LinearMipmapLinearFilter });
  const camera = new OrthographicCamera();
  camera.up.set(0, 0, 1);
  const nearness = new ShaderMaterial({
    side: DoubleSide,
    depthTest: false,
    depthWrite: false,
    blending: CustomBlending,
    blendEquation: MaxEquation,
    blendSrc: OneFactor,
    blendDst: OneFactor,
    vertexShader: `varying float vHeight;
      void main() {
        #include <begin_vertex>
        #include <project_vertex>
        vHeight = -mvPosition.z;
      }`,
    fragmentShader: `varying float vHeight;
      void main() {
        float near = clamp(1.0 - vHeight / ${REACH.toFixed(1)}, 0.0, 1.0);
        gl_FragColor = vec4(vec3(near * near), 1.0);
      }`,
  });
  const area: FootShadow['area'] = [0, 0, 1, 1];
  return {
    texture: target.texture,
    area,
    draw(renderer, scene, bounds, cut) {
      const spread = bounds.clone().expandByVector(new Vector3(MARGIN, 0, MARGIN));
      // What is cut away casts no shadow; its part of the bench is left out of the picture.
      const ground = cut ? behindCut(spread, cut) : spread;
      const centre = ground.getCenter(new Vector3());
      const { x: width, z: depth } = ground.getSize(new Vector3());
      area.splice(0, 4, centre.x - width / 2, centre.z - depth / 2, width, depth);
      Object.assign(camera, {
        left: -width / 2,
        right: width / 2,
        top: depth / 2,
        bottom: -depth / 2,
        near: 0,
        far: REACH,
      });
      camera.position.set(centre.x, bounds.min.y - 0.1, centre.z);
      camera.lookAt(centre.x, bounds.max.y + 1, centre.z);
      camera.updateProjectionMatrix();
      scene.overrideMaterial = nearness;
      renderer.setRenderTarget(target);
      renderer.clear();
      renderer.render(scene, camera);
      renderer.setRenderTarget(null);
      scene.overrideMaterial = null;
    },
    dispose() {
      target.dispose();
      nearness.dispose();
    },
  };
}
