#pragma once
// The order just taken, to be read out to the customer: its number large, the day, what is paid and what is
// owed. It stays until the next order is begun.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class TakenBlock : public QWidget {
    Q_OBJECT

public:
    explicit TakenBlock(QWidget* parent = nullptr);

    void show(const TakenOrder& taken, const Currency& currency, LocalDate today);

    QSize sizeHint() const override { return {300, 260}; }
    QSize minimumSizeHint() const override { return {280, 186}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_lead;
    QString m_number;
    QString m_customer;
    QString m_day;
    QString m_hour;
    QString m_paid;
    QString m_owed;
    bool m_isQuotation = false;
};

} // namespace holdfast::app
