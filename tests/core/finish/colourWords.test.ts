import { expect, test } from 'vitest';
import { colourWords } from '../../../src/core/finish/colourWords.ts';

// Named colours of CSS Color Module Level 4, section 6.1 (values from memory): the hue that stands
// in each name. How dark is called dark is this program's own: its "darkgreen" is a green here.
test.each([
  ['saddlebrown', '#8b4513', 'brown'],
  ['darkred', '#8b0000', 'red'],
  ['orangered', '#ff4500', 'red'],
  ['darkorange', '#ff8c00', 'orange'],
  ['greenyellow', '#adff2f', 'green'],
  ['yellow', '#ffff00', 'yellow'],
  ['olive', '#808000', 'olive'],
  ['darkgreen', '#006400', 'green'],
  ['seagreen', '#2e8b57', 'green'],
  ['lightgreen', '#90ee90', 'green'],
  ['turquoise', '#40e0d0', 'turquoise'],
  ['steelblue', '#4682b4', 'blue'],
  ['darkblue', '#00008b', 'blue'],
  ['lightblue', '#add8e6', 'blue'],
  ['blueviolet', '#8a2be2', 'violet'],
  ['hotpink', '#ff69b4', 'pink'],
  ['lightpink', '#ffb6c1', 'pink'],
  ['black', '#000000', 'black'],
  ['gray', '#808080', 'grey'],
  ['lightgray', '#d3d3d3', 'grey'],
  ['white', '#ffffff', 'white'],
])('%s is called what its own name says', (_name, hex, words) => {
  expect(colourWords(hex)).toContain(words);
});

test('leather, thread and paper of a new cover are called what they look like', () => {
  expect(['#8f5b3a', '#a97c58', '#c4b496', '#3a2418', '#efe3c6', '#7d2432'].map(colourWords)).toEqual([
    'brown',
    'light brown',
    'beige',
    'dark brown',
    'cream',
    'dark red',
  ]);
});

test('every colour has a name', () => {
  const steps = [0, 51, 102, 153, 204, 255].map((part) => part.toString(16).padStart(2, '0'));
  for (const r of steps)
    for (const g of steps)
      for (const b of steps) expect(colourWords(`#${r}${g}${b}`)).toMatch(/^((dark|light) )?[a-z]+$/);
});
