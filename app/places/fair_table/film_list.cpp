// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/film_list.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/widgets/key_hint.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListView>
#include <QPainter>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kDisk = 28;
constexpr int kNumberWide = 18; // the digit that goes to a row
constexpr int kMostNumbered = 9;
constexpr int kRowPadding = 4;
constexpr int kThreeLines = 400; // narrower than this

// Of metres and roll, below each other.
double rightWidthOf(const FilmOffer& offer) {
    return std::max(widthOf(lengthWords(offer), Type::SupportStrong), widthOf(rollWords(offer), Type::Small));
}

QColor rollInk(const FilmOffer& offer) {
    const bool lacks = offer.pick.lack != RollLack::None || !offer.pick.mayBeUsed;
    return lacks ? tokens().madder : tokens().ink2;
}

} // namespace

void FilmListModel::show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop,
                         bool knowsStyle) {
    beginResetModel();
    m_offers = std::move(offers);
    m_shop = std::move(shop);
    m_knowsStyle = knowsStyle;
    endResetModel();
}

int FilmListModel::rowOf(FilmId film) const {
    for (std::size_t row = 0; row < m_offers.size(); ++row)
        if (m_offers[row].film->id == film)
            return static_cast<int>(row);
    return -1;
}

int FilmListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_offers.size());
}

QVariant FilmListModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid())
        return {};
    const FilmOffer& it = offer(index.row());
    if (role == Qt::EditRole)
        return words(it.film->name());
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return {};
    return QStringLiteral("%1. %2 %3, %4")
        .arg(words(it.film->name()), fitnessWords(it, m_knowsStyle), lengthWords(it), rollWords(it));
}

QString fitnessWords(const FilmOffer& offer, bool knowsStyle) {
    if (!offer.unfit.empty())
        return words(offer.unfit.front().why);
    return knowsStyle ? FilmList::tr("Fits.") : FilmList::tr("Choose a style to see whether it fits.");
}

QString lengthWords(const FilmOffer& offer) {
    return offer.rolls > 1 ? FilmList::tr("%1 on %2 rolls").arg(metres(offer.left)).arg(offer.rolls)
                           : metres(offer.left);
}

QString rollWords(const FilmOffer& offer) {
    switch (offer.pick.lack) {
    case RollLack::NoRoll:
        return FilmList::tr("no roll");
    case RollLack::TooNarrow:
        return FilmList::tr("too narrow");
    case RollLack::TooShort:
        return FilmList::tr("too short");
    case RollLack::None:
        break;
    }
    const QString label = words(offer.pick.roll->label());
    if (!offer.pick.mayBeUsed)
        return FilmList::tr("%1, test first").arg(label);
    return offer.rolls > 1 ? FilmList::tr("%1 first").arg(label) : label;
}

void FilmDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const auto& model = static_cast<const FilmListModel&>(*index.model());
    const FilmOffer& offer = model.offer(index.row());
    const Tokens& dyes = tokens();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF row(option.rect);
    if (option.state & QStyle::State_Selected)
        painter->fillRect(row, dyes.woad);
    painter->fillRect(QRectF(row.left(), row.bottom() - 1, row.width(), 1), dyes.thread);
    const double first = lineHeight(Type::BodyStrong);
    const double second = lineHeight(Type::Small);
    double left = row.left() + kSpace8;
    if (index.row() < kMostNumbered)
        paintLine(*painter, QRectF(left, row.top(), kNumberWide, row.height()),
                  QString::number(index.row() + 1), Type::Small, dyes.ink3);
    left += kNumberWide;
    paintSwatch(*painter, QRectF(left, row.center().y() - kDisk / 2.0, kDisk, kDisk),
                colourOf(offer.film->rgb), kDisk / 2.0);
    left += kDisk + kSpace12;

    // Metres and the roll are never cut: at the right, or in a line of their own.
    const double rightWide = isNarrow(option) ? 0 : rightWidthOf(offer) + kSpace12;
    const double textWide = row.right() - kSpace12 - left - rightWide;
    const double top = row.top() + kRowPadding;
    const QString name = words(offer.film->name());
    const bool fits = widthOf(name, Type::BodyStrong) <= textWide;
    paintLine(*painter, QRectF(left, top, textWide, first), fits ? name : words(offer.film->shade),
              Type::BodyStrong, dyes.ink);
    paintFitness(*painter, QRectF(left, top + first, textWide - kSpace8, second), offer, model.knowsStyle());
    if (isNarrow(option))
        paintLine(*painter, QRectF(left, top + first + second, textWide, second),
                  QStringLiteral("%1, %2").arg(lengthWords(offer), rollWords(offer)), Type::Small,
                  rollInk(offer));
    else
        paintRight(*painter, row.adjusted(0, kRowPadding, -kSpace12, 0), offer);
    painter->restore();
}

bool FilmDelegate::isNarrow(const QStyleOptionViewItem& option) {
    return option.widget && option.widget->width() < kThreeLines;
}

void FilmDelegate::paintRight(QPainter& painter, const QRectF& row, const FilmOffer& offer) const {
    const double wide = rightWidthOf(offer);
    const QRectF line(row.right() - wide, row.top(), wide, lineHeight(Type::BodyStrong));
    paintLine(painter, line, lengthWords(offer), Type::SupportStrong, tokens().ink, Qt::AlignRight);
    paintLine(painter, QRectF(line.left(), line.bottom(), wide, lineHeight(Type::Small)), rollWords(offer),
              Type::Small, rollInk(offer), Qt::AlignRight);
}

void FilmDelegate::paintFitness(QPainter& painter, const QRectF& line, const FilmOffer& offer,
                                bool knowsStyle) const {
    const Tokens& dyes = tokens();
    double signLeft = line.left();
    if (knowsStyle) {
        const bool fits = offer.unfit.empty();
        paintIcon(painter, QRectF(signLeft, line.center().y() - 8, 16, 16),
                  fits ? QStringLiteral("done") : QStringLiteral("hold"), fits ? dyes.green : dyes.madder);
        signLeft += 20;
    }
    // A long reason is whole in the message once the film is chosen; here it says what it is about.
    QString why = fitnessWords(offer, knowsStyle);
    if (!offer.unfit.empty() && signLeft + widthOf(why, Type::Small) > line.right())
        why = words(offer.unfit.front().what) + u'.';
    paintLine(painter, QRectF(signLeft, line.top(), line.right() - signLeft, line.height()), why, Type::Small,
              offer.unfit.empty() ? dyes.ink2 : dyes.madder);
}

QSize FilmDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    const int lines = isNarrow(option) ? 2 : 1; // below the name
    return {200, std::max(kStallTarget,
                          2 * kRowPadding + lineHeight(Type::BodyStrong) + lines * lineHeight(Type::Small))};
}

FilmList::FilmList(QWidget* parent)
    : QWidget(parent)
    , m_model(new FilmListModel(this))
    , m_view(new QListView) {
    m_view->setObjectName(QStringLiteral("films"));
    m_view->setAccessibleName(tr("Films"));
    m_view->setModel(m_model);
    m_view->setItemDelegate(new FilmDelegate(m_view));
    m_view->setUniformItemSizes(true);
    m_view->setResizeMode(QListView::Adjust); // rows are higher on a narrow window
    m_view->setFrameShape(QFrame::NoFrame);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    giveFocusRing(m_view);
    m_view->installEventFilter(this);
    connect(m_view, &QListView::clicked, this, [this] { choose(false); });

    m_enter = new KeyHint({}, Qt::Key_Return, KeyHint::Order::KeyThenWords);
    m_shiftEnter = new KeyHint({}, Qt::SHIFT | Qt::Key_Return, KeyHint::Order::KeyThenWords);
    auto* escape = new KeyHint(tr("closes the list"), Qt::Key_Escape, KeyHint::Order::KeyThenWords);
    for (KeyHint* hint : {m_enter, m_shiftEnter, escape})
        hint->setTargetHeight(kStallTarget);
    m_enter->actOnClick([this] { choose(false); });
    m_shiftEnter->actOnClick([this] { choose(true); });
    escape->actOnClick([this] { emit closed(); });
    auto* hints = new QHBoxLayout;
    hints->setSpacing(kSpace16);
    hints->addWidget(m_enter);
    hints->addWidget(m_shiftEnter);
    hints->addWidget(escape);
    hints->addStretch();

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kFocusRoom, kFocusRoom, kFocusRoom, kSpace8);
    column->setSpacing(kSpace8);
    column->addWidget(m_view, 1);
    column->addLayout(hints);
}

void FilmList::show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop, bool knowsStyle,
                    FilmId chosen) {
    m_model->show(std::move(offers), std::move(shop), knowsStyle);
    m_view->setCurrentIndex(m_model->index(std::max(0, m_model->rowOf(chosen)), 0));
}

void FilmList::setReach(const QString& whole, const QString& alone) {
    m_enter->setWords(whole);
    m_shiftEnter->setWords(alone);
    m_shiftEnter->setVisible(!alone.isEmpty());
}

void FilmList::takeFocus() {
    m_view->setFocus(Qt::ShortcutFocusReason);
}

void FilmList::choose(bool isAlone) {
    const QModelIndex current = m_view->currentIndex();
    if (current.isValid())
        emit chosen(m_model->offer(current.row()).film->id, isAlone);
}

void FilmList::goTo(int row) {
    if (row >= 0 && row < m_model->rowCount())
        m_view->setCurrentIndex(m_model->index(row, 0));
}

bool FilmList::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_view)
        return QWidget::eventFilter(watched, event);
    switch (event->type()) {
    case QEvent::ShortcutOverride:
        // What can be typed is the list's own, before any letter that jumps elsewhere.
        if (isTyped(*static_cast<QKeyEvent*>(event))) {
            event->accept();
            return true;
        }
        return false;
    case QEvent::KeyPress:
        return takeKey(*static_cast<QKeyEvent*>(event));
    case QEvent::FocusOut: {
        const Qt::FocusReason why = static_cast<QFocusEvent*>(event)->reason();
        if (why != Qt::ActiveWindowFocusReason && why != Qt::PopupFocusReason)
            emit left();
        return false;
    }
    default:
        return false;
    }
}

bool FilmList::takeKey(const QKeyEvent& key) {
    switch (key.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!key.isAutoRepeat())
            choose(key.modifiers() & Qt::ShiftModifier);
        return true;
    case Qt::Key_Escape:
        emit closed();
        return true;
    case Qt::Key_Space:
        if (!m_typeAhead.isGoingOn()) {
            choose(false);
            return true;
        }
        break;
    default:
        break;
    }
    if (!isTyped(key))
        return false;
    if (key.key() >= Qt::Key_1 && key.key() <= Qt::Key_9)
        goTo(key.key() - Qt::Key_1);
    else
        goTo(m_typeAhead.rowAfter(key.text(), *m_model, m_view->currentIndex().row(), Qt::EditRole));
    return true;
}

} // namespace holdfast::app
