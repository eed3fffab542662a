#pragma once
// The lines of a section: a name, its words beside it, its state on a chip, and what Enter does. One stop for
// Tab; up and down move.

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
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // Where a line's parts stand across.
    struct Columns {
        qreal name = 0;
        qreal nameWide = 0;
        qreal text = 0;
        qreal textWide = 0;
        qreal endsRight = 0; // of chip and offer
    };
    Columns columns(const RoomLine& line) const;
    qreal endWide(const RoomLine& line) const;
    void lay();
    int heightFor(const RoomLine& line, bool isFirst) const;

    QVector<RoomLine> m_lines;
    std::vector<int> m_heights;
};

} // namespace holdfast::app
