// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/aside_list.h"

#include "app/desk/aside_words.h"
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/promised_aside.h"
#include "app/places/press_walk/text_lines.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QHash>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>

namespace holdfast::app {

namespace {

constexpr int kBatch = 60; // cards laid out at a time, so that a long list never stops the hands
constexpr qreal kCardWordsAt = 58;
constexpr qreal kEdge = 12;
constexpr qreal kHead = 33; // number and name
constexpr qreal kLine = 18;
constexpr qreal kThroughHeight = 44; // a finger's target
constexpr qreal kFreeingPad = 8;

QString iconOf(const AsideEntry& entry) {
    if (entry.stage == Stage::ToCut && !entry.isHeld)
        return QStringLiteral("scissors");
    if (!entry.frees)
        return {};
    switch (*entry.frees) {
    case FreeingAct::WashBlank:
        return QStringLiteral("wash");
    case FreeingAct::MarkDry:
        return QStringLiteral("washed");
    case FreeingAct::ReadLabel:
        return QStringLiteral("tag");
    case FreeingAct::TestStrip:
        return QStringLiteral("test-strip");
    case FreeingAct::ReceiveRoll:
    case FreeingAct::ChooseFilm:
    case FreeingAct::MoveRoll:
        return QStringLiteral("roll");
    case FreeingAct::ReceiveBlanks:
    case FreeingAct::ChooseBlank:
        return QStringLiteral("blank-rail");
    case FreeingAct::RecordReading:
        return QStringLiteral("humidity");
    case FreeingAct::EnterRecipe:
    case FreeingAct::ConfirmRecipe:
    case FreeingAct::CheckPress:
        return QStringLiteral("thermometer");
    case FreeingAct::ChooseWayRound:
        return QStringLiteral("pillow");
    case FreeingAct::ConfirmWording:
        return QStringLiteral("person");
    case FreeingAct::TakePayment:
        return QStringLiteral("coin");
    case FreeingAct::MarkNotPrewashed:
    case FreeingAct::AddPress:
    case FreeingAct::ReorderLayers:
    case FreeingAct::NoteLawChecked:
        break;
    }
    return {};
}

// Where the parts of a card are, from its top.
struct CardParts {
    QStringList what;
    QStringList why;
    QRectF freeing; // empty where only time frees
    QRectF through; // empty where nothing is held
    qreal height = 0;
};

} // namespace

class AsideDelegate : public QStyledItemDelegate {
public:
    AsideDelegate(const AsideModel& model, const QAbstractItemView& view)
        : m_model(model)
        , m_view(view) {}

    CardParts partsOf(int row, qreal width) const {
        const AsideEntry& entry = m_model.entry(row);
        CardParts parts;
        parts.what = brokenLines(words(entry.what), Type::SmallStrong, width - kCardWordsAt - 20 - kEdge);
        parts.why = brokenLines(words(entry.why), Type::Small, width - 2 * kEdge);
        qreal y = kHead + kLine * static_cast<qreal>(std::max<qsizetype>(1, parts.what.size())) + 6;
        y = std::max<qreal>(y, 56);
        y += kLine * static_cast<qreal>(parts.why.size()) + 6;
        if (!m_model.freeingWordsAt(row).isEmpty()) {
            parts.freeing = QRectF(kEdge - 2, y, width - 2 * kEdge + 4, kPressTarget);
            y += kPressTarget + 2;
        }
        if (m_model.mayBeWaived(row)) {
            parts.through = QRectF(kEdge - 2, y, width - 2 * kEdge + 4, kThroughHeight);
            y += kThroughHeight;
        }
        parts.height = y + 8;
        return parts;
    }

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const int width = m_view.viewport()->width();
        const AsideEntry& entry = m_model.entry(index.row());
        // Many cards share their reason's length of text; breaking lines is what costs.
        const QString key = QStringLiteral("%1|%2|%3|%4|%5")
                                .arg(width)
                                .arg(words(entry.what), words(entry.why))
                                .arg(m_model.mayBeWaived(index.row()))
                                .arg(m_model.freeingWordsAt(index.row()).isEmpty());
        const auto known = m_heights.constFind(key);
        if (known != m_heights.constEnd())
            return {width, known.value()};
        const int height = static_cast<int>(std::ceil(partsOf(index.row(), width).height));
        m_heights.insert(key, height);
        return {width, height};
    }

    void forgetHeights() { m_heights.clear(); }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const AsideEntry& entry = m_model.entry(index.row());
        const Garment& garment = m_model.garment(index.row());
        const ShopFacts& facts = m_model.shop().facts;
        const QRectF box(option.rect);
        const bool isCurrent = m_view.currentIndex() == index;
        painter->save();
        painter->setClipRect(box);
        painter->fillRect(box, dyes.card);
        if (index.row() > 0)
            painter->fillRect(QRectF(box.left(), box.top(), box.width(), 1), dyes.thread);
        paintGarment(*painter, QRectF(box.left() + 10, box.top() + 11, 38, 38), outlineName(facts, garment),
                     clothOf(facts, garment));

        const qreal left = box.left() + kCardWordsAt;
        const qreal behind = paintRun(*painter, {left, box.top() + 26}, garmentNumber(facts, garment),
                                      Type::BodyStrong, dyes.ink) +
                             5;
        paintRun(
            *painter, {behind, box.top() + 26},
            QFontMetricsF(fontOf(Type::Body))
                .elidedText(garmentInShort(facts, garment), Qt::ElideRight, box.right() - kEdge - behind),
            Type::Body, dyes.ink);

        const CardParts parts = partsOf(index.row(), box.width());
        const QColor ink = entry.isHeld ? dyes.madder : dyes.ink2;
        qreal y = box.top() + kHead;
        paintIcon(*painter, QRectF(left, y + 1, 16, 16),
                  entry.isHeld ? QStringLiteral("hold") : QStringLiteral("clock"), ink);
        for (const QString& line : parts.what) {
            paintLine(*painter, QRectF(left + 20, y, box.width(), kLine), line, Type::SmallStrong, ink);
            y += kLine;
        }
        y = std::max(y + 6, box.top() + 56);
        for (const QString& line : parts.why) {
            paintLine(*painter, QRectF(box.left() + kEdge, y, box.width(), kLine), line, Type::Small,
                      dyes.ink2);
            y += kLine;
        }
        if (!parts.freeing.isEmpty())
            paintFreeing(*painter, parts.freeing.translated(box.topLeft()), index.row(), isCurrent);
        if (!parts.through.isEmpty())
            paintThrough(*painter, parts.through.translated(box.topLeft()), isCurrent);
        if (isCurrent && (option.state & QStyle::State_HasFocus))
            paintOutline(*painter, box.adjusted(3, 3, -3, -3), kButtonRadius, dyes.indigo, 3);
        painter->restore();
    }

private:
    void paintFreeing(QPainter& painter, const QRectF& box, int row, bool isCurrent) const {
        const Tokens& dyes = tokens();
        const QString text = m_model.freeingWordsAt(row);
        const QString iconName = iconOf(m_model.entry(row));
        paintBox(painter, box, kButtonRadius, dyes.card, dyes.edge, 1.2);
        const qreal iconWidth = iconName.isEmpty() ? 0 : kIcon + 9;
        const qreal capWidth = isCurrent ? keyCapSize(QStringLiteral("F")).width() + 9 : 0;
        // What does not fit in one line gets two smaller ones.
        const qreal room = box.width() - 2 * kFreeingPad - iconWidth - capWidth;
        const bool fits = widthOf(text, Type::BodyStrong) <= room;
        const Type type = fits ? Type::BodyStrong : Type::SmallStrong;
        const QStringList lines = fits ? QStringList{text} : brokenLines(text, type, room);
        qreal wide = 0;
        for (const QString& line : lines)
            wide = std::max(wide, widthOf(line, type));
        qreal x = box.center().x() - (iconWidth + wide + capWidth) / 2;
        if (!iconName.isEmpty())
            paintIcon(painter, QRectF(x, box.center().y() - kIcon / 2.0, kIcon, kIcon), iconName, dyes.ink);
        x += iconWidth;
        qreal y = box.center().y() - static_cast<qreal>(lines.size()) * lineHeight(type) / 2;
        for (const QString& line : lines) {
            paintLine(painter, QRectF(x, y, wide, lineHeight(type)), line, type, dyes.ink);
            y += lineHeight(type);
        }
        if (isCurrent)
            paintCap(painter, {x + wide + 9, box.center().y()}, QStringLiteral("F"), dyes.ink);
    }

    void paintThrough(QPainter& painter, const QRectF& box, bool isCurrent) const {
        const QString text = AsideList::tr("Let it through");
        const qreal whole = widthOf(text, Type::SupportStrong) + (isCurrent ? 31 : 0);
        const qreal x = box.center().x() - whole / 2;
        paintLine(painter, QRectF(x, box.top(), whole, box.height()), text, Type::SupportStrong,
                  tokens().indigo);
        if (isCurrent)
            paintCap(painter, {x + widthOf(text, Type::SupportStrong) + 9, box.center().y()},
                     QStringLiteral("W"), tokens().indigo);
    }

    static void paintCap(QPainter& painter, QPointF leftMiddle, const QString& key, const QColor& ink) {
        const QSizeF size = keyCapSize(key);
        paintKeyCap(painter, QRectF(QPointF(leftMiddle.x(), leftMiddle.y() - size.height() / 2), size), key,
                    ink);
    }

    const AsideModel& m_model;
    const QAbstractItemView& m_view;
    mutable QHash<QString, int> m_heights;
};

void AsideModel::show(std::shared_ptr<const ReckonedShop> shop, const std::vector<AsideEntry>& entries) {
    beginResetModel();
    m_shop = std::move(shop);
    m_entries = entries;
    endResetModel();
}

QString AsideModel::freeingWordsAt(int at) const {
    return neededFor(*m_shop, entry(at));
}

bool AsideModel::mayBeWaived(int at) const {
    const auto& finding = entry(at).finding;
    if (!finding)
        return false;
    switch (finding->rule) {
    case Rule::BlankOutOfStock:
    case Rule::NoRollFits:
    case Rule::RecipeMissing:
    case Rule::NoPress:
        return false;
    default:
        return true;
    }
}

int AsideModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_entries.size());
}

QVariant AsideModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return {};
    const AsideEntry& shown = entry(index.row());
    const Garment& aside = garment(index.row());
    QString spoken = tr("%1 %2. %3. %4")
                         .arg(garmentNumber(m_shop->facts, aside), garmentInShort(m_shop->facts, aside),
                              words(shown.what), words(shown.why));
    if (const QString act = freeingWordsAt(index.row()); !act.isEmpty())
        spoken += QLatin1Char(' ') + tr("F: %1.").arg(act);
    if (mayBeWaived(index.row()))
        spoken += QLatin1Char(' ') + tr("W: let it through.");
    return spoken;
}

AsideList::AsideList(QWidget* parent)
    : QListView(parent)
    , m_delegate(new AsideDelegate(m_model, *this)) {
    setObjectName(QStringLiteral("asideList"));
    setAccessibleName(tr("Aside"));
    setModel(&m_model);
    m_delegate->setParent(this);
    setItemDelegate(m_delegate);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setLayoutMode(Batched);
    setBatchSize(kBatch);
    setMouseTracking(true);
    setViewportMargins(0, 0, 0, kSpace4); // what is cut at the foot is clear of the card's edge
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    giveNoFocusRing(this);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, [this] { viewport()->update(); });
}

void AsideList::show(std::shared_ptr<const ReckonedShop> shop, const std::vector<AsideEntry>& entries) {
    const AsideEntry* before = current();
    const std::optional<GarmentId> garment = before ? std::optional{before->garment} : std::nullopt;
    const int row = currentIndex().row();
    m_model.show(std::move(shop), entries);
    if (entries.empty())
        return;
    int at = std::clamp(row, 0, static_cast<int>(entries.size()) - 1);
    for (std::size_t entry = 0; garment && entry < entries.size(); ++entry)
        if (entries[entry].garment == *garment)
            at = static_cast<int>(entry);
    setCurrentIndex(m_model.index(at));
}

bool AsideList::turnTo(GarmentId garment) {
    for (int row = 0; row < m_model.rowCount(); ++row)
        if (m_model.entry(row).garment == garment) {
            setCurrentIndex(m_model.index(row));
            setFocus(Qt::ShortcutFocusReason);
            return true;
        }
    return false;
}

const AsideEntry* AsideList::current() const {
    const QModelIndex index = currentIndex();
    return index.isValid() ? &m_model.entry(index.row()) : nullptr;
}

void AsideList::mouseMoveEvent(QMouseEvent* event) {
    QListView::mouseMoveEvent(event);
    const QModelIndex index = indexAt(event->position().toPoint());
    bool isOverAct = false;
    if (index.isValid()) {
        const QPointF at = event->position() - QPointF(visualRect(index).topLeft());
        const CardParts parts = m_delegate->partsOf(index.row(), viewport()->width());
        isOverAct = parts.freeing.contains(at) || parts.through.contains(at);
    }
    viewport()->setCursor(isOverAct ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

void AsideList::mouseReleaseEvent(QMouseEvent* event) {
    QListView::mouseReleaseEvent(event);
    const QModelIndex index = indexAt(event->position().toPoint());
    if (event->button() != Qt::LeftButton || !index.isValid() || index != currentIndex())
        return;
    const QPointF at = event->position() - QPointF(visualRect(index).topLeft());
    const CardParts parts = m_delegate->partsOf(index.row(), viewport()->width());
    if (parts.freeing.contains(at))
        emit freed();
    else if (parts.through.contains(at))
        emit waived();
}

void AsideList::resizeEvent(QResizeEvent* event) {
    m_delegate->forgetHeights();
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

void AsideList::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        m_delegate->forgetHeights();
    QListView::changeEvent(event);
}

} // namespace holdfast::app
