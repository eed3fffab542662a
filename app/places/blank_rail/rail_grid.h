#pragma once
// The grid of one style: a row for each colour, a column for each size, what is washed, unwashed, kept or
// short in each. Arrow keys move the cell. The head row is a widget of its own, so that it stands while rows
// scroll.

#include "app/places/blank_rail/rail_stock.h"

#include <QWidget>

#include <map>

namespace holdfast::app {

// Where the columns stand in this width.
struct RailColumns {
    RailColumns(qreal width, std::size_t sizes);
    qreal colour, each, all;
    qreal left(std::size_t size) const { return colour + each * static_cast<qreal>(size); }
};

class RailHeads : public QWidget {
    Q_OBJECT

public:
    explicit RailHeads(QWidget* parent = nullptr);
    void show(const StyleRail* rail);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QStringList m_sizes;
};

class RailGrid : public QWidget {
    Q_OBJECT

public:
    explicit RailGrid(QWidget* parent = nullptr);

    // `inWash`: units of each spot that are already chosen for the wash.
    void show(const StyleRail* rail, const std::map<RailSpot, std::int64_t>& inWash);
    std::optional<RailSpot> current() const;
    void setCurrent(const RailSpot& spot);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void moved();
    void addAsked(); // Enter, or a double click

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Row {
        Colour colour;
        std::vector<RailCount> cells;
        RailCount sum;
    };
    void paintCell(QPainter& painter, const QRectF& box, const RailCount& count, std::int64_t inWash,
                   bool isCurrent) const;
    void paintColour(QPainter& painter, const QRectF& box, const Row& row) const;
    void move(int rows, int sizes);
    void say();

    BlankStyleId m_style;
    QString m_outline;
    std::vector<std::string> m_sizes;
    std::vector<Row> m_rows;
    std::map<RailSpot, std::int64_t> m_inWash;
    int m_row = 0;
    int m_size = 0;
};

} // namespace holdfast::app
