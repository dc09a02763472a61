"""Looking at a PDF with libraries that did not write it: its text, its size, the codes on a rendered page."""

from __future__ import annotations

import io

import numpy as np
import pypdf
import pypdfium2
import zxingcpp


def texts(content: bytes) -> list[str]:
    """The text of each page."""
    return [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(content)).pages]


def size(content: bytes) -> tuple[int, int]:
    """Width and height of the first page [mm]."""
    box = pypdf.PdfReader(io.BytesIO(content)).pages[0].mediabox
    return round(float(box.width) / 72 * 25.4), round(float(box.height) / 72 * 25.4)


def picture(content: bytes, page: int = 0, dots_per_inch: int = 150) -> np.ndarray:
    """A page as it is printed, in grey: rows of 0 (black) to 255 (white)."""
    document = pypdfium2.PdfDocument(content)
    try:
        return np.array(document[page].render(scale=dots_per_inch / 72, grayscale=True).to_numpy()).squeeze()
    finally:
        document.close()


def codes(content: bytes, page: int = 0) -> set[str]:
    """What the QR codes of a page say."""
    return {found.text for found in zxingcpp.read_barcodes(picture(content, page), formats=zxingcpp.BarcodeFormat.QRCode)}


def ink_at_the_edge(content: bytes, page: int = 0, margin_mm: float = 4) -> bool:
    """Whether something stands where printers can't print."""
    shown = picture(content, page)
    margin = int(margin_mm / 25.4 * 150)
    inside = shown[margin:-margin, margin:-margin]
    return bool((shown < 250).sum() != (inside < 250).sum())
