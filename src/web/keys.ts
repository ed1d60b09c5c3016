export { keyFrom, nextKey } from '../core/keys.js';
