export { designName, FACE_TITLES, placeWords, warningWords } from '../../../core/index.ts';
