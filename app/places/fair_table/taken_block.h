// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The order just taken, to be read out to the customer: its number large, the day or why none can be given
// yet, what is paid and what is owed. It stays until the next order is begun.

#include "app/places/fair_table/fair_table_model.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QWidget>

namespace holdfast::app {

class TakenBlock : public QWidget {
    Q_OBJECT

public:
    explicit TakenBlock(QWidget* parent = nullptr);

    void setLow(bool isLow); // without the large number, which the line above it says too
    void show(const TakenOrder& taken, const Currency& currency, LocalDate today);

    QSize sizeHint() const override { return minimumSizeHint() + QSize(20, 60); }
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Look {
        Role ground;
        Role ink;
        const char* iconName;
    };
    Look look() const;
    void readDay(LocalDate today);
    Type leadType() const;
    int reasonHeight() const; // of the line, or lines, below the day

    TakenOrder m_taken;
    QString m_lead;
    QString m_number;
    QString m_customer;
    QString m_day;
    QString m_reason; // below the day: the hour, or why there is no day
    QString m_paid;
    QString m_owed;
    bool m_isLow = false;
};

} // namespace holdfast::app
