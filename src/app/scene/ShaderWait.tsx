import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/**
 * Calls back when the graphics driver has compiled what the scene is shaded with. Comes last in the scene; until it has
 * called, no frame should be drawn, for a frame that needs a shader stops the page until it is there.
 */
export function ShaderWait({ onReady }: { readonly onReady: () => void }) {
  const get = useThree((state) => state.get);
  const frameloop = useThree((state) => state.frameloop);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the scene starts with is waited for, once
  useEffect(() => {
    const { gl, scene, camera } = get();
    gl.compile(scene, camera);
    return whenGpuIdle(gl, onReady);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: frames asked for while none could be drawn were lost
  useEffect(() => get().invalidate(), [frameloop]);
  return null;
}
