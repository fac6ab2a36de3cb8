// the reader of PDF pages works off the window's own thread; bundled as a file of its own
import 'pdfjs-dist/build/pdf.worker.min.mjs';
