#pragma once
// The day that can be promised, large, with the path to it in words along a running stitch: all of it is
// still to be done.

#include "core/orders/promise.h"

#include <QString>
#include <QWidget>

#include <optional>

namespace holdfast::app {

class PromiseBlock : public QWidget {
    Q_OBJECT

public:
    explicit PromiseBlock(QWidget* parent = nullptr);

    // Without a promise `lack` says why there is none yet. `stillOpen`: what of
    // the blanks is not chosen yet, in words.
    void show(const std::optional<Promise>& promise, LocalDate today, const QString& stillOpen,
              const QString& lack);
    // One line for day and hour, on low windows.
    void setLow(bool isLow);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Stop {
        QString what;
        QString when;
        bool isReady = false;
        bool isCut = false;
    };
    void paintPath(QPainter& painter, double top) const;

    QString m_day;
    QString m_hour;
    QString m_lack;
    std::vector<Stop> m_stops;
    QString m_open;
    bool m_isLow = false;
};

} // namespace holdfast::app
