// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One part of a form: its label above, the control, and below it the words that say what is wrong. A Field
// says its own.

#include <QString>
#include <QWidget>

namespace holdfast::app {

class Banner;
class Field;
class Label;

class FormRow : public QWidget {
    Q_OBJECT

public:
    // No label is shown where it is empty: the control says it itself.
    FormRow(const QString& label, QWidget* control, QWidget* parent = nullptr);

    void setLabel(const QString& label);
    void setError(const QString& words); // empty takes it away
    QString error() const { return m_error; }

private:
    Label* m_label = nullptr;
    Field* m_field = nullptr;
    Banner* m_wrong = nullptr; // made when first needed
    QString m_error;
};

} // namespace holdfast::app
