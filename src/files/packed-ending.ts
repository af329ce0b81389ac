/** How the name of an elevation grid ends that came along in a plan file. */
export const PACKED_ENDING = '.heights.json'
