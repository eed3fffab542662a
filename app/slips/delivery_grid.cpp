// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/delivery_grid.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>

#include <algorithm>
#include <optional>

namespace holdfast::app {

namespace {

constexpr std::int64_t kMostOfAKind = 5000;
constexpr int kMostColumns = 5;
constexpr int kRoomForCells = 294;
constexpr int kShade = 20;

class ColourSwatch : public QWidget {
public:
    explicit ColourSwatch(std::uint32_t rgb)
        : m_rgb(rgb) {
        setFixedSize(kShade, kShade);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintSwatch(painter, QRectF(rect()), colourOf(m_rgb), kKeyRadius);
    }

private:
    std::uint32_t m_rgb;
};

// None: that is no number of blanks. Empty is 0.
std::optional<std::int64_t> unitsIn(const Field* cell) {
    const QString text = cell->text().trimmed();
    if (text.isEmpty())
        return 0;
    bool isNumber = false;
    const qlonglong units = text.toLongLong(&isNumber);
    return isNumber && units >= 0 && units <= kMostOfAKind ? std::optional<std::int64_t>{units}
                                                           : std::nullopt;
}

int columnsThatFitIn(const std::vector<Field*>& cells) {
    int widest = 1;
    for (const Field* cell : cells)
        widest = std::max(widest, cell->minimumSizeHint().width());
    const int fitting = (kRoomForCells + kSpace4) / (widest + kSpace4);
    return std::clamp(std::min(fitting, static_cast<int>(cells.size())), 1, kMostColumns);
}

} // namespace

DeliveryGrid::DeliveryGrid(const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_name(name)
    , m_column(new QVBoxLayout(this))
    , m_sums((new Label(QString(), Type::SmallStrong, &Tokens::ink2))->wrapped()) {
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(kSpace8);
    m_column->addWidget(m_sums);
    m_sums->setObjectName(m_name + QStringLiteral("Sums"));
}

void DeliveryGrid::setKinds(const std::vector<std::string>& sizes, const std::vector<Colour>& colours) {
    setFocusProxy(nullptr);
    m_sizes = sizes;
    m_rows.clear();
    delete m_whole;
    m_whole = new QWidget;
    auto* blocks = new QVBoxLayout(m_whole);
    blocks->setContentsMargins(0, 0, 0, 0);
    blocks->setSpacing(kSpace12);
    m_column->insertWidget(0, m_whole);
    for (const Colour& colour : colours)
        m_rows.push_back(makeRow(colour, static_cast<int>(m_rows.size())));
    m_whole->show();
    if (!m_rows.empty() && !m_sizes.empty())
        setFocusProxy(m_rows.front().cells.front());
    showSums();
}

DeliveryGrid::Row DeliveryGrid::makeRow(const Colour& colour, int at) {
    Row row{colour, new Label(QString(), Type::SmallStrong, &Tokens::ink2), {}};
    auto* block = new QVBoxLayout;
    block->setSpacing(kSpace4);
    auto* head = new QHBoxLayout;
    head->setSpacing(kSpace8);
    head->addWidget(new ColourSwatch(colour.rgb));
    auto* name = (new Label(words(colour.name), Type::Support))->wrapped();
    head->addWidget(name, 1);
    head->addWidget(row.sum);
    block->addLayout(head);
    auto* grid = new QGridLayout;
    grid->setSpacing(kSpace4);
    for (const std::string& size : m_sizes)
        row.cells.push_back(makeCell(colour, words(size), at, static_cast<int>(row.cells.size())));
    const int columns = columnsThatFitIn(row.cells);
    for (int column = 0; column < static_cast<int>(row.cells.size()); ++column)
        grid->addWidget(row.cells[static_cast<std::size_t>(column)], column / columns, column % columns);
    for (int column = 0; column < columns; ++column)
        grid->setColumnStretch(column, 1);
    block->addLayout(grid);
    static_cast<QVBoxLayout*>(m_whole->layout())->addLayout(block);
    return row;
}

// Its size is in it until a number is.
Field* DeliveryGrid::makeCell(const Colour& colour, const QString& size, int row, int column) {
    auto* cell = new Field;
    cell->setObjectName(QStringLiteral("%1-%2-%3").arg(m_name).arg(row).arg(column));
    cell->editor()->setObjectName(cell->objectName() + QStringLiteral("Editor"));
    cell->editor()->setAccessibleName(tr("%1 in %2").arg(size, words(colour.name)));
    cell->setToolTip(cell->editor()->accessibleName());
    cell->setPlaceholder(size);
    cell->setMinimumWidth(0);
    cell->editor()->installEventFilter(this);
    connect(cell, &Field::edited, this, [this] {
        showSums();
        emit changed();
    });
    return cell;
}

void DeliveryGrid::beginAt(const std::string& size, ColourId colour) {
    const auto row = std::ranges::find(m_rows, colour, [](const Row& each) { return each.colour.id; });
    const auto column = std::ranges::find(m_sizes, size);
    if (row != m_rows.end() && column != m_sizes.end())
        setFocusProxy(row->cells[static_cast<std::size_t>(column - m_sizes.begin())]);
}

std::vector<DeliveryGrid::Cell> DeliveryGrid::filled() const {
    std::vector<Cell> cells;
    for (const Row& row : m_rows)
        for (std::size_t column = 0; column < row.cells.size(); ++column)
            if (const auto units = unitsIn(row.cells[column]).value_or(0); units > 0)
                cells.push_back({m_sizes[column], row.colour.id, units});
    return cells;
}

QString DeliveryGrid::wrong() {
    QStringList wrong;
    for (const Row& row : m_rows)
        for (std::size_t column = 0; column < row.cells.size(); ++column) {
            if (unitsIn(row.cells[column]))
                continue;
            if (wrong.isEmpty())
                setFocusProxy(row.cells[column]);
            wrong.append(tr("%1 in %2: 1 to %3.")
                             .arg(words(m_sizes[column]), words(row.colour.name))
                             .arg(kMostOfAKind));
        }
    return wrong.join(u' ');
}

bool DeliveryGrid::isEmpty() const {
    return std::ranges::all_of(m_rows, [](const Row& row) {
        return std::ranges::all_of(row.cells,
                                   [](const Field* cell) { return cell->text().trimmed().isEmpty(); });
    });
}

void DeliveryGrid::showSums() {
    std::int64_t all = 0;
    std::vector<std::int64_t> ofSizes(m_sizes.size(), 0);
    for (const Row& row : m_rows) {
        std::int64_t sum = 0;
        for (std::size_t column = 0; column < row.cells.size(); ++column) {
            const std::int64_t units = unitsIn(row.cells[column]).value_or(0);
            sum += units;
            ofSizes[column] += units;
        }
        all += sum;
        row.sum->setText(sum > 0 ? QString::number(sum) : QString());
    }
    QStringList parts;
    for (std::size_t column = 0; column < m_sizes.size(); ++column)
        if (ofSizes[column] > 0)
            parts.append(tr("%1: %2").arg(words(m_sizes[column])).arg(ofSizes[column]));
    m_sums->setVisible(all > 0);
    m_sums->setText(
        tr("%n blank. %1|%n blanks. %1", nullptr, howMany(all)).arg(parts.join(QStringLiteral(", "))));
}

QVariant DeliveryGrid::typed() const {
    QVariantMap cells;
    for (const Row& row : m_rows)
        for (std::size_t column = 0; column < row.cells.size(); ++column)
            if (!row.cells[column]->text().isEmpty())
                cells.insert(QStringLiteral("%1/%2").arg(row.colour.id.value).arg(words(m_sizes[column])),
                             row.cells[column]->text());
    return cells;
}

void DeliveryGrid::putBack(const QVariant& typed) {
    const QVariantMap cells = typed.toMap();
    for (const Row& row : m_rows)
        for (std::size_t column = 0; column < row.cells.size(); ++column)
            row.cells[column]->setText(
                cells.value(QStringLiteral("%1/%2").arg(row.colour.id.value).arg(words(m_sizes[column])))
                    .toString());
    showSums();
    emit changed();
}

// To the cell that many further; false where there is none.
bool DeliveryGrid::goBy(const QObject* editor, int rows, int columns) {
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        const auto& cells = m_rows[row].cells;
        const auto at = std::ranges::find(cells, editor,
                                          [](const Field* cell) -> const QObject* { return cell->editor(); });
        if (at == cells.end())
            continue;
        // What lies before the first wraps round to far beyond the last.
        const std::size_t toRow = row + static_cast<std::size_t>(rows);
        const auto toColumn = static_cast<std::size_t>(at - cells.begin() + columns);
        if (toRow >= m_rows.size() || toColumn >= cells.size())
            return false;
        Field* cell = m_rows[toRow].cells[toColumn];
        cell->setFocus(Qt::TabFocusReason);
        cell->selectAll();
        return true;
    }
    return false;
}

bool DeliveryGrid::eventFilter(QObject* watched, QEvent* event) {
    const auto* editor = qobject_cast<QLineEdit*>(watched);
    if (event->type() != QEvent::KeyPress || editor == nullptr)
        return QWidget::eventFilter(watched, event);
    const auto* pressed = static_cast<QKeyEvent*>(event);
    if ((pressed->modifiers() & ~Qt::KeyboardModifiers(Qt::KeypadModifier)) != Qt::NoModifier)
        return QWidget::eventFilter(watched, event);
    const bool isWhole = editor->selectedText() == editor->text();
    switch (pressed->key()) {
    case Qt::Key_Up:
        return goBy(watched, -1, 0);
    case Qt::Key_Down:
        return goBy(watched, 1, 0);
    case Qt::Key_Left:
        return (isWhole || editor->cursorPosition() == 0) && goBy(watched, 0, -1);
    case Qt::Key_Right:
        return (isWhole || editor->cursorPosition() == editor->text().size()) && goBy(watched, 0, 1);
    default:
        return QWidget::eventFilter(watched, event);
    }
}

} // namespace holdfast::app
