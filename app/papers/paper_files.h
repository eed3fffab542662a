// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Papers as files: many in one PDF, or one as a drawing in millimetres. On any thread. A file that was there
// stays whole until all of the new one is written, and when it is stopped.

#include "app/papers/paper.h"
#include "core/trade/result.h"

#include <QString>

#include <functional>
#include <span>

class QPagedPaintDevice;
class QPdfWriter;

namespace holdfast::app {

enum class Drawn { Whole, Stopped };

// Called with the share done; says whether to go on.
using GoesOnDrawing = std::function<bool(double share)>;

// A page of this size; what is drawn begins so far from its edges.
void setPage(QPagedPaintDevice& device, const QSizeF& size, double margin = 0);

// Each paper on a page of its own size, its letters as text.
Result<Drawn> drawPapers(QPagedPaintDevice& device, std::span<const Paper> papers,
                         const GoesOnDrawing& goesOn);

// As fine as a printer needs it, with this title.
void preparePdf(QPdfWriter& writer, const QString& title);

// A PDF that `draw` draws: whole, or what was there before. An error names the file and says why.
Result<Drawn> writePdf(const QString& path, const QString& title,
                       const std::function<Result<Drawn>(QPdfWriter&)>& draw);
Result<Drawn> writePapers(const QString& path, const QString& title, std::span<const Paper> papers,
                          const GoesOnDrawing& goesOn);

// SVG with width and height in mm, its letters as outlines, so that no font is needed.
std::string paperSvg(const Paper& paper);

// The whole text, or what was there before. An error names the file and says why.
Result<Done> writeText(const QString& path, const std::string& text);

} // namespace holdfast::app
