// Inflate with a preset dictionary, which the browsers' own DecompressionStream cannot.
export { deflateSync, gunzipSync, Inflate, inflateSync } from 'fflate';
