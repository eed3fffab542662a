#include "app/places/fair_table/film_list.h"

#include "app/desk/formats.h"
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

constexpr int kRow = 48;
constexpr int kDisk = 28;

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
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
        return {};
    const FilmOffer& it = offer(index.row());
    return QStringLiteral("%1. %2 %3, %4")
        .arg(words(it.film->name()), fitnessWords(it, m_knowsStyle), rollWords(it), metres(it.left));
}

QString fitnessWords(const FilmOffer& offer, bool knowsStyle) {
    if (!offer.unfit.empty())
        return words(offer.unfit.front().why);
    return knowsStyle ? FilmList::tr("Fits.") : FilmList::tr("Choose a style to see whether it fits.");
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
    return offer.pick.mayBeUsed ? label : FilmList::tr("%1, test first").arg(label);
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
    paintSwatch(*painter, QRectF(row.left() + kSpace12, row.center().y() - kDisk / 2.0, kDisk, kDisk),
                colourOf(offer.film->rgb), kDisk / 2.0);

    // At the right, never cut: metres and the roll.
    const QString left = metres(offer.left);
    const QString roll = rollWords(offer);
    const bool lacks = offer.pick.lack != RollLack::None || !offer.pick.mayBeUsed;
    const double rightWide =
        std::max(widthOf(left, Type::SupportStrong), widthOf(roll, Type::Small)) + kSpace12;
    const QRectF right(row.right() - rightWide - kSpace12, row.top(), rightWide, row.height());
    paintLine(*painter, QRectF(right.left(), row.top() + 4, rightWide, 20), left, Type::SupportStrong,
              dyes.ink, Qt::AlignRight);
    paintLine(*painter, QRectF(right.left(), row.top() + 24, rightWide, 18), roll, Type::Small,
              lacks ? dyes.madder : dyes.ink2, Qt::AlignRight);

    const double textLeft = row.left() + kSpace12 + kDisk + kSpace12;
    paintLine(*painter, QRectF(textLeft, row.top() + 4, right.left() - textLeft, 20),
              words(offer.film->name()), Type::BodyStrong, dyes.ink);
    const bool fits = offer.unfit.empty() && model.knowsStyle();
    const QRectF second(textLeft, row.top() + 24, right.left() - textLeft - kSpace8, 18);
    double signLeft = second.left();
    if (model.knowsStyle()) {
        paintIcon(*painter, QRectF(signLeft, second.center().y() - 8, 16, 16),
                  fits ? QStringLiteral("done") : QStringLiteral("hold"), fits ? dyes.green : dyes.madder);
        signLeft += 20;
    }
    // A long reason stands whole in the message once the film is chosen; here it says what it is about.
    QString why = fitnessWords(offer, model.knowsStyle());
    if (!offer.unfit.empty() && signLeft + widthOf(why, Type::Small) > second.right())
        why = words(offer.unfit.front().what) + u'.';
    paintLine(*painter, QRectF(signLeft, second.top(), second.right() - signLeft, 18), why, Type::Small,
              offer.unfit.empty() ? dyes.ink2 : dyes.madder);
    painter->restore();
}

QSize FilmDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {200, kRow};
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
    m_view->setFrameShape(QFrame::NoFrame);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    giveFocusRing(m_view);
    m_view->installEventFilter(this);
    connect(m_view, &QListView::clicked, this, [this] { choose(false); });

    m_enter = new KeyHint({}, Qt::Key_Return, KeyHint::Order::KeyThenWords);
    m_shiftEnter = new KeyHint({}, Qt::SHIFT | Qt::Key_Return, KeyHint::Order::KeyThenWords);
    auto* escape = new KeyHint(tr("leaves it"), Qt::Key_Escape, KeyHint::Order::KeyThenWords);
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

bool FilmList::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_view || event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    switch (key->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        choose(key->modifiers() & Qt::ShiftModifier);
        return true;
    case Qt::Key_Escape:
        emit closed();
        return true;
    default:
        return false;
    }
}

} // namespace holdfast::app
