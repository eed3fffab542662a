// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/text_lines.h"

#include <QTextLayout>

namespace holdfast::app {

QStringList brokenLines(const QString& text, Type type, qreal width) {
    if (text.isEmpty())
        return {};
    QTextLayout layout(text, fontOf(type));
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    QStringList lines;
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        lines << text.mid(line.textStart(), line.textLength()).trimmed();
    }
    layout.endLayout();
    return lines;
}

} // namespace holdfast::app
