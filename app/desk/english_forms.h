// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// English has a form for one and another for every other number, and both stand in the text itself:
// tr("%n blank|%n blanks", nullptr, count). This takes the one that the count asks for, where no translation
// has its own.

#include <QTranslator>

namespace holdfast::app {

class EnglishForms : public QTranslator {
public:
    using QTranslator::QTranslator;

    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char* remark, int count) const override;
};

} // namespace holdfast::app
