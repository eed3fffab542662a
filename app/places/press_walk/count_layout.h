// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the words of the panel are: the step, what is to be done as large as there is room for, its detail,
// and a note. They keep clear of the count at the right and of the stitches below. Where there is little room
// they get smaller; the last to give way is the note, which says why, and it is never cut.

#include "app/theme/type.h"

#include <QRectF>
#include <QString>

#include <vector>

namespace holdfast::app {

struct PanelLine {
    enum class Part { Step, Word, Detail, Note };

    QString text;
    Type type = Type::Panel;
    QRectF box;
    Part part = Part::Word;
};

struct PanelText {
    QString step;
    QString word;
    QString detail;
    QString note;
};

// Within `room`. In so little room that not even the smallest words fit, the detail is left out, and then all
// but the note, where there is one.
std::vector<PanelLine> panelLines(const PanelText& text, const QRectF& room);

} // namespace holdfast::app
