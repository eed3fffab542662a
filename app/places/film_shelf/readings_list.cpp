// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/readings_list.h"

#include "app/desk/formats.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kAroundReading = 12; // above and below a row's words
constexpr int kFewestReadings = 4;
constexpr qreal kBetweenParts = 24;

class ReadingDelegate : public QStyledItemDelegate {
public:
    ReadingDelegate(const ReadingsModel& readings, const QAbstractItemView& view)
        : m_readings(readings)
        , m_view(view) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {m_view.viewport()->width(), lineHeight(Type::Body) + kAroundReading};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const QRectF row(option.rect);
        painter->save();
        if (option.state & QStyle::State_Selected)
            painter->fillRect(row, dyes.woad);
        if (m_view.currentIndex() == index && (option.state & QStyle::State_HasFocus))
            paintOutline(*painter, row.adjusted(1, 1, -1, -1), kKeyRadius, dyes.indigo, 2);
        painter->fillRect(QRectF(row.left(), row.bottom() - 1, row.width(), 1), dyes.thread);
        QRectF line = row.adjusted(kSpace12, 0, -kSpace12, 0);
        const auto put = [&](const QString& words, Type type, const QColor& ink, qreal room) {
            paintLine(*painter, line, words, type, ink);
            line.setLeft(line.left() + std::max(room, widthOf(words, type)) + kBetweenParts);
        };
        put(m_readings.when(index.row()), Type::Support, dyes.ink2,
            widthOf(QStringLiteral("25 Nov 2026 09:30"), Type::Support));
        put(m_readings.air(index.row()), Type::BodyStrong, dyes.ink,
            widthOf(QStringLiteral("100 %, −39.5 °C"), Type::BodyStrong));
        put(m_readings.outside(index.row()), Type::Support, dyes.madder, 0);
        painter->restore();
    }

private:
    const ReadingsModel& m_readings;
    const QAbstractItemView& m_view;
};

} // namespace

void ReadingsModel::show(std::shared_ptr<const ClimateSeries> readings, const StorageLimits& limits,
                         const Now& now) {
    beginResetModel();
    m_readings = std::move(readings);
    m_limits = limits;
    m_now = now;
    endResetModel();
}

const ClimateReading& ReadingsModel::reading(int row) const {
    return (*m_readings)[m_readings->size() - 1 - static_cast<std::size_t>(row)];
}

QString ReadingsModel::when(int row) const {
    const LocalTime at = m_now.toLocal(reading(row).at);
    return tr("%1 %2").arg(date(dateOf(at)), clock(at));
}

QString ReadingsModel::air(int row) const {
    const ClimateReading& shown = reading(row);
    // One precision in the whole column.
    return tr("%1, %2 °C")
        .arg(shown.hasHumidity ? humidity(shown.humidity) : tr("humidity not known"),
             valueWords(Decimal{shown.temperature.value, 1}));
}

QString ReadingsModel::outside(int row) const {
    const ClimateReading& shown = reading(row);
    QStringList parts;
    if (shown.hasHumidity && !m_limits.humidity.contains(shown.humidity))
        parts << (shown.humidity > m_limits.humidity.high ? tr("too damp") : tr("too dry"));
    if (!m_limits.temperature.contains(shown.temperature))
        parts << (shown.temperature > m_limits.temperature.high ? tr("too hot") : tr("too cold"));
    return parts.join(tr(", "));
}

int ReadingsModel::rowAt(Instant at) const {
    if (!m_readings || m_readings->empty())
        return -1;
    const auto next = std::ranges::upper_bound(*m_readings, at, {}, &ClimateReading::at);
    const auto before = next - m_readings->begin();
    return rowCount() - static_cast<int>(std::max<std::ptrdiff_t>(1, before));
}

int ReadingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !m_readings ? 0 : static_cast<int>(m_readings->size());
}

QVariant ReadingsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return {};
    const QString limits = outside(index.row());
    const QString said = tr("%1: %2").arg(when(index.row()), air(index.row()));
    return limits.isEmpty() ? said : tr("%1, %2").arg(said, limits);
}

ReadingsList::ReadingsList(ReadingsModel& readings, QWidget* parent)
    : QListView(parent)
    , m_readings(readings) {
    setObjectName(QStringLiteral("readings"));
    setAccessibleName(tr("Readings, the newest first"));
    setModel(&readings);
    auto* delegate = new ReadingDelegate(readings, *this);
    delegate->setParent(this);
    setItemDelegate(delegate);
    setUniformItemSizes(true);
    setSelectionMode(ContiguousSelection);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    giveNoFocusRing(this);
    connect(this, &QListView::doubleClicked, this, &ReadingsList::correctionAsked);
}

std::optional<ReadingsList::Run> ReadingsList::chosen() const {
    int newest = m_readings.rowCount();
    int oldest = -1;
    for (const QItemSelectionRange& range : selectionModel()->selection()) {
        newest = std::min(newest, range.top());
        oldest = std::max(oldest, range.bottom());
    }
    if (oldest < 0)
        return std::nullopt;
    return Run{m_readings.reading(oldest).at, m_readings.reading(newest).at, oldest - newest + 1};
}

QSize ReadingsList::minimumSizeHint() const {
    return {160, kFewestReadings * (lineHeight(Type::Body) + kAroundReading)};
}

void ReadingsList::keyPressEvent(QKeyEvent* event) {
    const bool isPlain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    if (isPlain && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        emit correctionAsked();
    else if (isPlain && event->key() == Qt::Key_Delete)
        emit removalAsked();
    else
        QListView::keyPressEvent(event);
}

void ReadingsList::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
    QListView::selectionChanged(selected, deselected);
    emit choiceChanged();
}

} // namespace holdfast::app
