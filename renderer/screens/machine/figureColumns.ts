/** Right edges of the figure columns in a picture of some width [px]. */
export const figureColumns = (widthPx: number) => ({
  left: widthPx - 250,
  low: widthPx - 206,
  middle: widthPx - 148,
  high: widthPx - 90,
  basis: widthPx - 14,
});
