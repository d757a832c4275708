import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { whenGpuIdle } from './whenGpuIdle.ts';

/**
 * Calls back when the graphics driver has compiled the scene's shaders. Must come last in the scene; no frame should be
 * drawn before, because a frame that needs a missing shader blocks the page.
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
