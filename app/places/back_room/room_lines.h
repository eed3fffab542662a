// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The lines of a section: a name, its words next to it, its state on a chip, and what Enter does. One stop
// for Tab; up and down move. Where a line offers two things, left and right choose which of them Enter does.

#include "app/places/back_room/room_sheet.h"
#include "app/widgets/painted_lines.h"

#include <vector>

namespace holdfast::app {

class RoomLines : public PaintedLines {
    Q_OBJECT

public:
    explicit RoomLines(QWidget* parent = nullptr);

    void show(const QVector<RoomLine>& lines);

signals:
    void deedAsked(const holdfast::app::RoomDeed& deed);

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override { return m_heights[static_cast<std::size_t>(line)]; }
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    QString nameOf(int line) const override;
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void moveTo(int line) override;

private:
    // Where a line's parts are across.
    struct Columns {
        qreal name = 0;
        qreal nameWide = 0;
        qreal text = 0;
        qreal textWide = 0;
        QRectF offer;      // at the right end; empty where nothing is offered
        QRectF otherOffer; // before it
        qreal chipRight = 0;
    };
    Columns columns(const RoomLine& line, qreal top) const;
    qreal topOf(int line, const QRectF& box) const;
    void lay();
    int heightFor(const RoomLine& line, bool isFirst) const;
    void paintWords(QPainter& painter, const RoomLine& line, const Columns& at, qreal top, qreal high) const;
    void paintOffer(QPainter& painter, const QRectF& box, const QString& words, bool isChosen) const;

    QVector<RoomLine> m_lines;
    std::vector<int> m_heights;
    qreal m_nameWide = 0; // of the widest name
    bool m_isAtOther = false;
};

} // namespace holdfast::app
