import { expect, test } from '@playwright/test';

test('the browser under test draws with WebGL 2: a shaded triangle reads back in its own colour', async ({ page }) => {
  await page.goto('about:blank');
  const pixel = await page.evaluate(() => {
    const gl = document.createElement('canvas').getContext('webgl2');
    if (!gl) return null;
    const program = gl.createProgram();
    const shaders = [
      [
        gl.VERTEX_SHADER,
        'void main() { gl_Position = vec4(gl_VertexID == 1 ? 3 : -1, gl_VertexID == 2 ? 3 : -1, 0, 1); }',
      ],
      [gl.FRAGMENT_SHADER, 'precision highp float; out vec4 colour; void main() { colour = vec4(0.2, 0.4, 0.6, 1); }'],
    ] as const;
    for (const [kind, source] of shaders) {
      const shader = gl.createShader(kind)!;
      gl.shaderSource(shader, `#version 300 es\n${source}`);
      gl.compileShader(shader);
      gl.attachShader(program, shader);
    }
    gl.linkProgram(program);
    // biome-ignore lint/correctness/useHookAtTopLevel: a WebGL call, not a React hook
    gl.useProgram(program);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    const bytes = new Uint8Array(4);
    gl.readPixels(10, 10, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
    return [...bytes];
  });
  expect(pixel).toEqual([51, 102, 153, 255]);
});
