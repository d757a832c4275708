import { expect, test } from 'vitest';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Vec3 } from '../../src/core/math/vec3.ts';
import { adjust, Unknowns } from '../../src/core/photograph/adjust.ts';
import { type Lens, pixelOf, rotationBy, seenFrom, sightOf } from '../../src/core/photograph/camera.ts';
import { homographyBetween } from '../../src/core/photograph/homography.ts';

/**
 * OpenCV 4.6.0: projectPoints, Rodrigues, undistortPoints and findHomography with the arguments below. Its camera has y down and z
 * away from the camera in the object's space too, so a point (x, y, z) of the sheet is (x, -y, -z) there.
 */
const TURN: Vec3 = [0.3, -0.2, 0.5];
const LENS: Lens = { focal: 3200, centre: [2010, 1490], k1: -0.12, k2: 0.05 };
const SHIFT: Vec3 = [10, -20, 700];
const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [100, -50, 0],
  [-150, -120, -30],
  [80, 140, -55],
];
const PROJECTED = [
  [2055.708690426608, 1398.582619146784],
  [2317.598300164703, 1774.6486314218164],
  [1203.2763116926442, 1509.3286794387063],
  [2620.420784372229, 975.1934579715307],
];
const UNDISTORTED = [
  [0.01428571428571429, -0.02857142857142858],
  [0.09632211608375482, 0.08913559829236137],
  [-0.25401616589026266, 0.006086095045806488],
  [0.19217556112017237, -0.16207383269952377],
];

test('points are seen where OpenCV projects them, and look back where it undistorts them', () => {
  POINTS.forEach((point, i) => {
    const [x, y] = pixelOf(LENS, seenFrom(rotationBy(TURN), SHIFT, point));
    expect(x).toBeCloseTo(PROJECTED[i]![0]!, 9);
    expect(y).toBeCloseTo(PROJECTED[i]![1]!, 9);
    const [u, v] = sightOf(LENS, PROJECTED[i] as unknown as Vec2);
    expect(u).toBeCloseTo(UNDISTORTED[i]![0]!, 12);
    expect(v).toBeCloseTo(UNDISTORTED[i]![1]!, 12);
  });
});

test('a rotation by a Rodrigues vector is that of OpenCV, for a large angle too', () => {
  const opencv = [
    [0.9566494375082665, 0.26723985362521385, -0.11577873012558393],
    [0.25296689627559543, -0.9594454246263807, -0.12438740511883153],
    [-0.1443246448248207, 0.08970695512544424, -0.9854557621214212],
  ];
  rotationBy([3, 0.4, -0.2])
    .flat()
    .forEach((value, i) => {
      expect(value).toBeCloseTo(opencv.flat()[i]!, 12);
    });
});

test('the projective map of four points is that of OpenCV, which keeps them as single floats', () => {
  const from: Vec2[] = [
    [0, 0],
    [210, 0],
    [210, 297],
    [0, 297],
  ];
  const to: Vec2[] = [
    [512.3, 401.7],
    [2930.1, 377.2],
    [2711.9, 3402.8],
    [799.4, 3219.5],
  ];
  const opencv = [
    10.339816651081252, 1.6519800881232887, 512.2999877929677, -0.26773683132080983, 12.247569687197753,
    401.70001220703085, -0.00040050413411444566, 0.0008572845599493042, 1,
  ];
  const map = homographyBetween(from, to)!;
  map.forEach((value, i) => {
    expect(Math.abs(value / map[8]! / opencv[i]! - 1)).toBeLessThan(1e-6);
  });
});

/**
 * Z. Zhang, A flexible new technique for camera calibration (1998; IEEE PAMI 22, 2000): his published five views of a plane of squares,
 * first corners of the squares of rows 1, 3, 6, 8 and columns 1, 3, 6, 8, pixels, rounded to a hundred-thousandth. The model's squares are
 * 8/9 inch apart.
 */
const ZHANG: readonly (readonly Vec2[])[] = [
  [
    [63.43921, 405.5768],
    [170.8327, 412.46038],
    [342.94735, 420.86863],
    [462.12744, 424.69823],
    [67.41852, 293.99663],
    [174.32386, 297.93371],
    [346.01308, 302.86158],
    [464.57048, 305.55439],
    [76.1671, 129.0634],
    [181.25563, 128.48383],
    [349.6916, 128.56678],
    [465.95751, 129.54762],
    [83.91124, 24.44961],
    [187.12492, 20.95505],
    [351.92099, 18.2613],
    [465.65621, 18.20752],
  ],
  [
    [74.95174, 409.09268],
    [181.84296, 414.98756],
    [349.91948, 421.5926],
    [464.00389, 424.13271],
    [67.86991, 304.15854],
    [178.05245, 308.27327],
    [352.24469, 313.22723],
    [470.25771, 315.65909],
    [59.42173, 134.17909],
    [173.78765, 134.43075],
    [355.04511, 136.27657],
    [478.09455, 138.37479],
    [56.319, 15.14551],
    [172.64026, 12.56361],
    [356.91308, 12.39568],
    [481.99601, 14.22358],
  ],
  [
    [137.22826, 394.36338],
    [225.75104, 404.36301],
    [378.98389, 419.44445],
    [494.46746, 428.93285],
    [141.46862, 293.07422],
    [229.83109, 297.15399],
    [382.75683, 303.24408],
    [498.20319, 306.95499],
    [149.54446, 143.23994],
    [236.826, 138.81359],
    [387.36883, 131.66081],
    [500.51669, 127.09849],
    [155.54353, 47.17733],
    [241.70671, 37.5937],
    [389.58228, 22.9579],
    [500.49669, 13.50718],
  ],
  [
    [84.04443, 410.12756],
    [198.8416, 411.61152],
    [365.14154, 410.8469],
    [469.44711, 408.82237],
    [87.04077, 295.27176],
    [201.17688, 298.10851],
    [366.94155, 300.71831],
    [470.76758, 301.80644],
    [94.2211, 125.838],
    [206.02628, 130.28172],
    [368.67232, 138.04082],
    [470.69111, 143.5188],
    [101.00971, 18.10336],
    [210.39825, 23.82758],
    [369.27555, 34.33604],
    [469.08155, 42.38201],
  ],
  [
    [78.69152, 361.27466],
    [177.63829, 378.49162],
    [321.77684, 401.63393],
    [413.0092, 415.05305],
    [96.22723, 262.82846],
    [196.07661, 281.46178],
    [341.27168, 307.52004],
    [432.8538, 323.33581],
    [125.50009, 112.39704],
    [225.54838, 132.81346],
    [370.74171, 163.0928],
    [461.9425, 182.62726],
    [146.81572, 12.91232],
    [245.61747, 34.31023],
    [389.36484, 67.31091],
    [479.96831, 89.10713],
  ],
];
const MODEL: readonly Vec3[] = [0, 2, 5, 7].flatMap((row) =>
  [0, 2, 5, 7].map((column): Vec3 => [column * 0.888889, 0.5 + row * 0.888889, 0]),
);
/** All 256 corners of each view gave Zhang these: focal lengths 832.5 and 832.53, skew 0.204494. */
const PUBLISHED: Lens = { focal: 832.515, centre: [303.959, 206.585], k1: -0.228601, k2: 0.190353 };
/** OpenCV 4.6.0, calibrateCameraExtended on these 80 corners with one focal length, k1 and k2: figures and standard deviations. */
const OPENCV = {
  rms: 0.15615880349645553,
  figures: [831.6311942393301, 308.95320722423253, 210.28077960844323, -0.21620838300153755, 0.13103920499882576],
  deviations: [4.041613633907442, 2.058096443031016, 1.84544693060098, 0.014154383561237823, 0.07969672776134755],
};

/** Adjusts a camera, or only its standpoints where the lens is given, to Zhang's views. */
function calibrated(given: Lens | null) {
  const unknowns = new Unknowns();
  const fixed = given === null ? null : 1e-9;
  const start = given ?? { focal: 800, centre: [320, 240] as const, k1: 0, k2: 0 };
  const lens = [
    [start.focal, 1],
    [start.centre[0], 1],
    [start.centre[1], 1],
    [start.k1, 1e-2],
    [start.k2, 1e-2],
  ].map(([value, scale]) => unknowns.add(value!, scale!, fixed === null ? null : { value: value!, u: fixed }));
  const observations = ZHANG.map((view) => {
    const pose = [
      ...[0, 0, 0].map((value) => unknowns.add(value, 1e-2)),
      ...[-3, 3, 14].map((value) => unknowns.add(value, 0.1)),
    ];
    return view.map((seen, i) => ({
      of: [...lens, ...pose],
      residuals: (values: Float64Array) => {
        const [focal, x, y, k1, k2] = lens.map((place) => values[place]!) as [number, number, number, number, number];
        const [a, b, c, p, q, r] = pose.map((place) => values[place]!) as [
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        const [u, v] = pixelOf(
          { focal, centre: [x, y], k1, k2 },
          seenFrom(rotationBy([a, b, c]), [p, q, r], MODEL[i]!),
        );
        return [seen[0] - u, seen[1] - v];
      },
    }));
  });
  const adjusted = adjust(unknowns, observations.flat());
  const squares = observations.map((view) =>
    view.reduce(
      (sum, { residuals }) => sum + residuals(adjusted.values).reduce((part, each) => part + each * each, 0),
      0,
    ),
  );
  return { ...adjusted, lens, rms: squares.map((square) => Math.sqrt(square / MODEL.length)) };
}

test("with Zhang's published camera his corners are seen within a quarter of a pixel, as OpenCV has it", () => {
  // OpenCV 4.6.0, solvePnPRefineLM and projectPoints with that camera, its skew left out: root mean square of each view.
  const opencv = [
    0.2132165353096993, 0.17759372011861457, 0.18085438494251185, 0.14674839181548005, 0.1454687166157792,
  ];
  calibrated(PUBLISHED).rms.forEach((rms, i) => {
    // His two focal lengths, 832.5 and 832.53, are one here.
    expect(rms).toBeCloseTo(opencv[i]!, 2);
  });
});

test('the camera found from his corners is that of OpenCV to its digits, with its standard deviations, and his within three of them', () => {
  const { values, covariance, lens, rms } = calibrated(null);
  expect(Math.sqrt(rms.reduce((sum, each) => sum + each * each, 0) / rms.length)).toBeCloseTo(OPENCV.rms, 4);
  // Each residual claims one pixel here. For its deviations OpenCV counts the 80 points less 35 unknowns, where there are 160 coordinates.
  const sigma = Math.sqrt((OPENCV.rms ** 2 * 80) / (80 - 35));
  lens.forEach((place, i) => {
    const deviation = Math.sqrt(covariance[place]![place]!) * sigma;
    expect(Math.abs(values[place]! - OPENCV.figures[i]!)).toBeLessThan(1e-3 * OPENCV.deviations[i]!);
    expect(deviation / OPENCV.deviations[i]!).toBeCloseTo(1, 4);
    const his = [PUBLISHED.focal, ...PUBLISHED.centre, PUBLISHED.k1, PUBLISHED.k2][i]!;
    expect(Math.abs(values[place]! - his)).toBeLessThan(3 * OPENCV.deviations[i]!);
  });
});
