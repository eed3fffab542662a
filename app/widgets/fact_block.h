// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One fact: a small label above, the value strong, a small note of a line or more below.

#include "app/theme/type.h"

#include <QStringList>
#include <QWidget>

namespace holdfast::app {

class FactBlock : public QWidget {
    Q_OBJECT

public:
    explicit FactBlock(const QString& label, QWidget* parent = nullptr);

    void set(const QString& value, const QString& note = {}, Role ink = &Tokens::ink);
    void setLabel(const QString& label);
    void setValueType(Type type); // Type::Value unless set; Type::Number for amounts

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void say();
    QStringList notes() const;

    QString m_label;
    QString m_value;
    QString m_note;
    Role m_ink = &Tokens::ink;
    Type m_valueType = Type::Value;
};

} // namespace holdfast::app
