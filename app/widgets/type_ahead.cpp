// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/type_ahead.h"

#include <QAbstractItemModel>
#include <QApplication>
#include <QKeyEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

bool beginsWord(const QString& text, qsizetype at) {
    return at == 0 || !text.at(at - 1).isLetterOrNumber();
}

} // namespace

bool isTyped(const QKeyEvent& key) {
    const auto modifiers = key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
    return modifiers == Qt::NoModifier && !key.text().isEmpty() && key.text().front().isPrint();
}

bool hasWordLike(const QString& text, const QString& typed) {
    for (qsizetype at = 0; at < text.size(); ++at) {
        if (!beginsWord(text, at) || !text.at(at).isLetterOrNumber())
            continue;
        if (QStringView(text).mid(at).startsWith(typed, Qt::CaseInsensitive))
            return true;
        qsizetype digits = at;
        while (digits < text.size() && text.at(digits) == u'0')
            ++digits;
        if (digits > at && QStringView(text).mid(digits).startsWith(typed, Qt::CaseInsensitive))
            return true;
    }
    return false;
}

bool TypeAhead::isGoingOn() const {
    return m_sinceLast.isValid() && m_sinceLast.elapsed() < QApplication::keyboardInputInterval();
}

int TypeAhead::rowAfter(const QString& key, const QAbstractItemModel& model, int current, int role) {
    return rowAfter(key, model.rowCount(), current,
                    [&](int row) { return model.index(row, 0).data(role).toString(); });
}

int TypeAhead::rowAfter(const QString& key, int rows, int current,
                        const std::function<QString(int)>& wordsOf) {
    const bool goesOn = isGoingOn();
    m_typed = goesOn ? m_typed + key : key;
    m_sinceLast.start();
    const bool isRepeated = std::ranges::all_of(m_typed, [&](QChar letter) { return letter == m_typed[0]; });
    const QString wanted = isRepeated && m_typed.size() > 1 ? m_typed.left(1) : m_typed;
    // A word that grows may stay where it is; a new one, or the same letter again, goes on.
    const int first = goesOn && wanted == m_typed ? current : current + 1;
    for (int step = 0; step < rows; ++step) {
        const int row = (std::max(0, first) + step) % rows;
        if (hasWordLike(wordsOf(row), wanted))
            return row;
    }
    return -1;
}

} // namespace holdfast::app
