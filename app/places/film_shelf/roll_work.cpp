// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_work.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"
#include "core/cutting/cut_length.h"
#include "core/film/waiting_decals.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kAroundWork = 10; // above and below a row's words
constexpr int kFewestWork = 3;
constexpr qreal kTick = 22;

int workRow() {
    return lineHeight(Type::BodyStrong) + kAroundWork;
}

bool isOverRoll(Rule rule) {
    return rule == Rule::RollPastAge || rule == Rule::RollBadlyKept || rule == Rule::StripFailed;
}

const Decal* decalOf(const Garment& garment, DecalId id) {
    const auto found = std::ranges::find(garment.decals, id, &Decal::id);
    return found == garment.decals.end() ? nullptr : &*found;
}

class WorkDelegate : public QStyledItemDelegate {
public:
    WorkDelegate(const RollWorkModel& work, const QAbstractItemView& view)
        : m_work(work)
        , m_view(view) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {m_view.viewport()->width(), workRow()};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const WorkLine& line = m_work.line(index.row());
        const QRectF row(option.rect);
        painter->save();
        const bool isCurrent = m_view.currentIndex() == index && (option.state & QStyle::State_HasFocus);
        if (isCurrent)
            paintBox(*painter, row.adjusted(0, 1, 0, -1), kKeyRadius, dyes.woad, dyes.indigo, 2);
        const QRectF box(row.left() + 4, row.center().y() - kTick / 2 + 0.5, kTick, kTick);
        paintBox(*painter, box, kKeyRadius, dyes.card, dyes.edge, 1.4);
        if (m_work.isTicked(index.row()))
            paintIcon(*painter, box.adjusted(3, 3, -3, -3), QStringLiteral("tick"), dyes.indigo);

        const qreal right = row.right() - 4;
        const qreal lengthWidth = std::max(44.0, widthOf(line.length, Type::BodyStrong));
        paintLine(*painter, QRectF(right - lengthWidth, row.top(), lengthWidth, row.height()), line.length,
                  Type::BodyStrong, dyes.ink, Qt::AlignRight);
        const Type dayType = line.isEarly ? Type::SmallStrong : Type::Small;
        const qreal dayWidth = widthOf(line.day, dayType);
        const qreal dayLeft = right - lengthWidth - 8 - dayWidth;
        paintLine(*painter, QRectF(dayLeft, row.top(), dayWidth, row.height()), line.day, dayType,
                  line.isEarly ? dyes.weld : dyes.ink2);
        const qreal baseline = row.center().y() + 5;
        const qreal behind =
            paintRun(*painter, {box.right() + 9, baseline}, line.number, Type::BodyStrong, dyes.ink) + 8;
        const QString shown =
            QFontMetricsF(fontOf(Type::Support))
                .elidedText(line.words, Qt::ElideRight, std::max(0.0, dayLeft - 8 - behind));
        paintRun(*painter, {behind, baseline}, shown, Type::Support, dyes.ink);
        painter->restore();
    }

private:
    const RollWorkModel& m_work;
    const QAbstractItemView& m_view;
};

} // namespace

void RollWorkModel::show(std::shared_ptr<const ReckonedShop> shop, RollId roll) {
    beginResetModel();
    if (roll != m_roll) {
        m_unticked.clear();
        m_isWhatIf = false;
    }
    m_shop = std::move(shop);
    m_roll = roll;
    fill();
    endResetModel();
    emit ticksChanged();
}

void RollWorkModel::setWhatIf(bool isWhatIf) {
    if (!m_shop || m_isWhatIf == isWhatIf)
        return;
    beginResetModel();
    m_isWhatIf = isWhatIf;
    fill();
    m_first.clear();
    for (const WorkLine& each : m_lines)
        if (each.isEarly)
            m_first.insert(each.decals.front());
    endResetModel();
    emit ticksChanged();
}

std::vector<DecalId> RollWorkModel::waiting() const {
    const RollForecast* forecast = m_shop->allotment.forecast(m_roll);
    if (!forecast)
        return {};
    if (!m_isWhatIf)
        return forecast->decals;
    const ShopFacts& facts = m_shop->facts;
    const FilmRoll& roll = facts.rolls.at(m_roll);
    std::vector<DecalId> decals;
    for (const WaitingDecal& each : waitingDecals(facts))
        if (each.film && each.film->id == roll.film &&
            lengthFor(*each.decal, *each.film, roll.width, facts.settings))
            decals.push_back(each.decal->id);
    return decals;
}

void RollWorkModel::fill() {
    m_lines.clear();
    const ShopFacts& facts = m_shop->facts;
    const RollForecast* forecast = m_shop->allotment.forecast(m_roll);
    const std::set<DecalId> early =
        forecast ? std::set(forecast->pressEarly.begin(), forecast->pressEarly.end()) : std::set<DecalId>{};
    const std::vector<DecalId> shown = waiting();
    std::map<DecalId, std::pair<const Garment*, const Decal*>> found;
    for (const DecalId id : shown)
        found[id] = {};
    for (const Garment& garment : facts.garments)
        for (const Decal& decal : garment.decals)
            if (const auto at = found.find(decal.id); at != found.end())
                at->second = {&garment, &decal};

    // Alike decals of one order are on one line, in the order in which they are promised.
    using Likeness = std::tuple<OrderId, std::string, Placement, BlankStyleId>;
    struct Alike {
        std::vector<const Decal*> decals;
        std::vector<const Garment*> garments;
    };
    std::map<Likeness, std::size_t> places;
    std::vector<Alike> groups;
    for (const DecalId id : shown) {
        const auto [garment, decal] = found[id];
        if (!decal)
            continue;
        const auto [place, isNew] = places.try_emplace(
            {garment->order, decal->describe().english(), decal->placement, garment->style}, groups.size());
        if (isNew)
            groups.emplace_back();
        groups[place->second].decals.push_back(decal);
        groups[place->second].garments.push_back(garment);
    }
    const FilmRoll& cutFrom = facts.rolls.at(m_roll);
    for (const Alike& group : groups) {
        const Garment& first = *group.garments.front();
        const Order& order = facts.orderOf(first);
        const QString name =
            tr("%1, %2").arg(words(facts.styleOf(first).name), words(group.decals.front()->describe()));
        WorkLine line;
        for (const Decal* decal : group.decals)
            line.decals.push_back(decal->id);
        for (const Garment* garment : group.garments)
            line.garments.push_back(garment->id);
        line.number =
            group.garments.size() == 1 ? garmentNumber(facts, first) : QString::number(order.number);
        line.words = group.decals.size() == 1 ? name : tr("%1 × %2").arg(group.decals.size()).arg(name);
        line.day = dayNear(dateOf(order.promised), m_shop->now.today());
        line.length =
            metres(nestedLength(group.decals, facts.films.at(cutFrom.film), cutFrom.width, facts.settings));
        line.isEarly = std::ranges::any_of(line.decals, [&](DecalId id) { return early.contains(id); });
        m_lines.push_back(std::move(line));
    }
}

void RollWorkModel::clear() {
    beginResetModel();
    m_lines.clear();
    m_isWhatIf = false;
    m_shop.reset();
    endResetModel();
    emit ticksChanged();
}

bool RollWorkModel::isTicked(int at) const {
    const DecalId first = line(at).decals.front();
    return m_isWhatIf ? m_first.contains(first) : !m_unticked.contains(first);
}

void RollWorkModel::setTicked(int at, bool isTicked) {
    std::set<DecalId>& marked = m_isWhatIf ? m_first : m_unticked;
    if (isTicked == m_isWhatIf)
        marked.insert(line(at).decals.front());
    else
        marked.erase(line(at).decals.front());
    emit dataChanged(index(at), index(at), {Qt::CheckStateRole});
    emit ticksChanged();
}

std::vector<DecalId> RollWorkModel::tickedDecals() const {
    std::vector<DecalId> ticked;
    for (int at = 0; at < rowCount(); ++at)
        if (isTicked(at))
            ticked.insert(ticked.end(), line(at).decals.begin(), line(at).decals.end());
    return ticked;
}

Millimetres RollWorkModel::tickedLength() const {
    if (!m_shop)
        return {};
    std::vector<const Decal*> decals;
    for (int at = 0; at < rowCount(); ++at)
        for (std::size_t each = 0; isTicked(at) && each < line(at).decals.size(); ++each)
            decals.push_back(
                decalOf(m_shop->facts.garments.at(line(at).garments[each]), line(at).decals[each]));
    const FilmRoll& roll = m_shop->facts.rolls.at(m_roll);
    return nestedLength(decals, m_shop->facts.films.at(roll.film), roll.width, m_shop->facts.settings);
}

QString RollWorkModel::cannotCut() const {
    if (!m_shop || m_lines.empty())
        return tr("No work waits for this roll.");
    if (tickedDecals().empty())
        return tr("Tick what is to be cut.");
    const FilmRoll& roll = m_shop->facts.rolls.at(m_roll);
    if (tickedLength() > roll.left)
        return tr("It needs %1, the roll has %2.").arg(metres(tickedLength()), metres(roll.left));
    for (int at = 0; at < rowCount(); ++at)
        for (std::size_t each = 0; isTicked(at) && each < line(at).garments.size(); ++each)
            for (const Finding& finding : m_shop->of(line(at).garments[each]).findings)
                if (finding.holds() && finding.roll == m_roll && isOverRoll(finding.rule))
                    return tr("%1: press a test strip first, or let the garments through.")
                        .arg(words(finding.what));
    return {};
}

int RollWorkModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

QVariant RollWorkModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const WorkLine& shown = line(index.row());
    if (role == Qt::CheckStateRole)
        return isTicked(index.row()) ? Qt::Checked : Qt::Unchecked;
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return tr("%1 %2, %3, %4").arg(shown.number, shown.words, shown.day, shown.length);
    if (role == Qt::ToolTipRole)
        return shown.isEarly ? tr("%1. Promised for after the roll’s use-by.").arg(shown.words) : shown.words;
    return {};
}

bool RollWorkModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::CheckStateRole || !checkIndex(index, CheckIndexOption::IndexIsValid))
        return false;
    setTicked(index.row(), value.toInt() == Qt::Checked);
    return true;
}

Qt::ItemFlags RollWorkModel::flags(const QModelIndex& index) const {
    return index.isValid()
               ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable | Qt::ItemNeverHasChildren
               : Qt::NoItemFlags;
}

RollWorkList::RollWorkList(RollWorkModel& work, QWidget* parent)
    : QListView(parent)
    , m_work(work) {
    setObjectName(QStringLiteral("rollWork"));
    setAccessibleName(tr("Waiting work"));
    setModel(&work);
    auto* delegate = new WorkDelegate(work, *this);
    delegate->setParent(this);
    setItemDelegate(delegate);
    setUniformItemSizes(true);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    setFocusPolicy(Qt::TabFocus);
    giveNoFocusRing(this);
    setFills(false);
    connect(&work, &QAbstractItemModel::modelReset, this, [this] {
        updateGeometry();
        if (m_work.rowCount() > 0 && !currentIndex().isValid())
            setCurrentIndex(m_work.index(0));
    });
}

void RollWorkList::setFills(bool fills) {
    m_fills = fills;
    setVerticalScrollBarPolicy(fills ? Qt::ScrollBarAsNeeded : Qt::ScrollBarAlwaysOff);
    updateGeometry();
}

QSize RollWorkList::sizeHint() const {
    return minimumSizeHint();
}

QSize RollWorkList::minimumSizeHint() const {
    const int rows = std::max(1, m_work.rowCount());
    return {120, (m_fills ? std::min(rows, kFewestWork) : rows) * workRow()};
}

void RollWorkList::turn(const QModelIndex& index) {
    if (index.isValid())
        m_work.setTicked(index.row(), !m_work.isTicked(index.row()));
}

void RollWorkList::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space)
        turn(currentIndex());
    else if (event->key() == Qt::Key_Left)
        emit turnedLeft();
    else
        QListView::keyPressEvent(event);
}

void RollWorkList::mouseReleaseEvent(QMouseEvent* event) {
    QListView::mouseReleaseEvent(event);
    if (event->button() == Qt::LeftButton)
        turn(indexAt(event->position().toPoint()));
}

} // namespace holdfast::app
