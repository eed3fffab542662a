// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/text_runs.h"

#include <QChar>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr QChar kFirstStrongIsolate(0x2068);
constexpr QChar kPopIsolate(0x2069);

bool isRightToLeft(char32_t letter) {
    const QChar::Direction direction = QChar::direction(letter);
    return direction == QChar::DirR || direction == QChar::DirAL;
}

// What a run of right-to-left words does not go over: letters of another script, and digits.
bool endsRun(char32_t letter) {
    const QChar::Direction direction = QChar::direction(letter);
    return direction == QChar::DirL || direction == QChar::DirEN;
}

} // namespace

QString withRunsApart(const QString& text) {
    const QList<uint> letters = text.toUcs4();
    if (std::none_of(letters.begin(), letters.end(), isRightToLeft))
        return text;
    QString apart;
    for (qsizetype at = 0; at < letters.size();) {
        if (!isRightToLeft(letters[at])) {
            apart += QString::fromUcs4(reinterpret_cast<const char32_t*>(&letters[at]), 1);
            ++at;
            continue;
        }
        qsizetype last = at;
        for (qsizetype next = at; next < letters.size() && !endsRun(letters[next]); ++next)
            if (isRightToLeft(letters[next]) || QChar::isMark(letters[next]))
                last = next;
        apart += kFirstStrongIsolate;
        apart += QString::fromUcs4(reinterpret_cast<const char32_t*>(&letters[at]), last - at + 1);
        apart += kPopIsolate;
        at = last + 1;
    }
    return apart;
}

} // namespace holdfast::app
