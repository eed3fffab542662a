// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/care_sheet.h"

#include "app/desk/formats.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/order_actions.h"

#include <QBoxLayout>
#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>

namespace holdfast::app {

namespace {

// "418-b, Tee, M, Moss"
QString garmentLine(const ReckonedShop& shop, const Garment& garment) {
    const BlankStyle& style = shop.facts.styleOf(garment);
    const Colour* colour = style.colour(garment.colour);
    return QStringLiteral("%1, %2, %3, %4")
        .arg(words(shop.facts.labelOf(garment)), words(style.name), words(garment.size),
             colour ? words(colour->name) : QString());
}

} // namespace

CareSheet::CareSheet(ShopDesk& desk, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("careSheet"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kCardPadding);
    column->setSpacing(kSpace12);
    m_title = new Label({}, Type::CardTitle);
    column->addWidget(m_title);
    m_note = (new Label({}, Type::Body))->wrapped();
    m_note->setObjectName(QStringLiteral("careNote"));
    column->addWidget(m_note);
    m_waits = new Banner;
    m_rest = new Banner;
    m_owed = new Banner;
    m_owed->setObjectName(QStringLiteral("owedBanner"));
    column->addWidget(m_waits);
    column->addWidget(m_rest);
    column->addWidget(m_owed);
    connect(m_owed, &Banner::acted, this, &CareSheet::moneyAsked);

    m_choice = new QWidget;
    m_choice->setObjectName(QStringLiteral("whichGo"));
    auto* choices = new QVBoxLayout(m_choice);
    choices->setContentsMargins(0, 0, 0, 0);
    choices->setSpacing(kSpace4);
    column->addWidget(m_choice);

    m_text = new VerticalScroll;
    m_text->column()->setSpacing(kSpace8);
    column->addWidget(m_text, 1);

    m_handOver = new Button(tr("Hand over"), QStringLiteral("ready"), Button::Kind::Primary);
    m_handOver->setObjectName(QStringLiteral("handOverNow"));
    m_handOver->setTargetHeight(kPressTarget);
    m_handOver->showKeyText(tr("Enter"));
    connect(m_handOver, &Button::clicked, this, &CareSheet::handOver);
    column->addWidget(m_handOver);
    auto* foot = new QHBoxLayout;
    foot->setSpacing(kSpace8);
    auto* back = new Button(tr("Back"));
    back->setObjectName(QStringLiteral("leaveCare"));
    back->showKeyText(tr("Esc"));
    connect(back, &Button::clicked, this, &CareSheet::left);
    auto* copyText = new Button(tr("Copy text"));
    copyText->setObjectName(QStringLiteral("copyCare"));
    copyText->showKeyText(tr("Ctrl C"));
    connect(copyText, &Button::clicked, this, &CareSheet::copy);
    auto* print = new Button(tr("Print cards"));
    print->setObjectName(QStringLiteral("printCare"));
    print->setToolTip(tr("A care card for each garment"));
    print->showKeyText(tr("P"));
    connect(print, &Button::clicked, this, &CareSheet::print);
    foot->addWidget(back);
    foot->addWidget(print);
    foot->addWidget(copyText);
    column->addLayout(foot);
}

void CareSheet::show(const OrderView& view) {
    if (!m_view || m_view->id != view.id)
        m_stays.clear();
    m_view = view;
    m_pressed = view.pressed();
    const Order& order = view.order();
    m_title->setText(tr("Care of order %1").arg(order.number));
    m_note->setVisible(!order.note.empty());
    m_note->setText(words(order.note));
    fillChoice();
    showChosen();
}

// A line for each that is pressed, where there are several. They stay as long as these do: one of them may
// have the keyboard.
void CareSheet::fillChoice() {
    std::vector<GarmentId> asked;
    if (m_pressed.size() > 1)
        for (const Garment* garment : m_pressed)
            asked.push_back(garment->id);
    m_choice->setVisible(!asked.empty());
    if (asked == m_asked)
        return;
    m_asked = std::move(asked);
    for (Switch* each : m_goes)
        delete each;
    m_goes.clear();
    if (m_asked.empty())
        return;
    for (const Garment* garment : m_pressed) {
        auto* goes = new Switch(garmentLine(*m_view->shop, *garment));
        goes->setText(goes->accessibleName());
        goes->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        goes->setObjectName(QStringLiteral("goes-%1").arg(words(garment->letter())));
        goes->setChecked(!m_stays.contains(garment->id));
        connect(goes, &Switch::toggled, this, [this, id = garment->id](bool isOn) { choose(id, isOn); });
        m_choice->layout()->addWidget(goes);
        m_goes.push_back(goes);
    }
}

void CareSheet::choose(GarmentId garment, bool goes) {
    if (goes)
        m_stays.erase(garment);
    else
        m_stays.insert(garment);
    showChosen();
}

void CareSheet::showChosen() {
    const OrderView& view = *m_view;
    const Order& order = view.order();
    const bool isOver = m_pressed.empty();
    m_garments = m_pressed;
    std::erase_if(m_garments, [this](const Garment* garment) { return m_stays.contains(garment->id); });
    // After the hand-over the text stays, to be copied or read once more.
    if (isOver)
        for (const Garment* garment : view.garments())
            if (garment->handedOverAt)
                m_garments.push_back(garment);

    const auto all = view.garments().size();
    const auto unpressed = isOver ? 0 : all - m_pressed.size();
    const bool isPart = !isOver && m_garments.size() < all;
    m_waits->setVisible(isPart);
    m_waits->set(Tone::Caution, tr("%1 of %2 garments go now.").arg(m_garments.size()).arg(all),
                 unpressed > 0 ? tr("The others are not pressed yet.") : tr("The others stay here."));

    std::optional<Instant> until;
    for (const Garment* garment : m_garments)
        if (const auto rest = view.shop->of(garment->id).restUntil; rest && *rest > view.shop->now.instant)
            until = std::max(until.value_or(*rest), *rest);
    m_rest->setVisible(until.has_value());
    if (until) {
        const LocalTime local = view.shop->now.toLocal(*until);
        m_rest->set(
            Tone::Caution, tr("Still resting."),
            tr("Not to be washed before %1 %2; the card says so.").arg(day(dateOf(local)), clock(local)),
            QStringLiteral("resting"));
    }

    const Money owed = order.owed();
    m_owed->setVisible(owed.minor > 0 && !isOver);
    m_owed->set(Tone::Caution, tr("%1 is still owed.").arg(money(owed, view.shop->facts.settings.currency)),
                {}, QStringLiteral("coin"));
    m_owed->setAction(tr("Money"), QStringLiteral("coin"));

    m_handOver->setText(isOver ? tr("Handed over") : tr("Hand over"));
    m_handOver->setCannot(isOver               ? tr("Everything of this order was handed over.")
                          : m_garments.empty() ? tr("Choose what is handed over.")
                                               : QString());
    fillText();
}

void CareSheet::fillText() {
    while (QLayoutItem* item = m_text->column()->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const CareText& text : careTexts(*m_view, m_garments)) {
        m_text->column()->addWidget(new Label(text.heading, Type::Value));
        m_text->column()->addWidget(
            (new Label(text.firstWash, Type::BodyStrong, &Tokens::indigo))->wrapped());
        for (const QString& line : text.lines)
            m_text->column()->addWidget((new Label(line, Type::Body))->wrapped());
        m_text->column()->addWidget(new ThreadLine);
    }
    m_text->column()->addStretch(1);
}

void CareSheet::begin() {
    m_handOver->setFocus(Qt::OtherFocusReason);
}

void CareSheet::handOver() {
    std::vector<GarmentId> chosen;
    for (const Garment* garment : m_garments)
        chosen.push_back(garment->id);
    m_stays.clear();
    m_asked.clear(); // what stays today is asked again next time
    if (m_desk.done(db::handOver(m_desk.file(), m_view->id, m_desk.now(), chosen)))
        emit handedOver();
}

void CareSheet::copy() {
    QGuiApplication::clipboard()->setText(asPlainText(*m_view, careTexts(*m_view, m_garments)));
    m_desk.say(tr("The care text is on the clipboard."));
}

void CareSheet::print() {
    SlipTarget matter;
    matter.order = m_view->id;
    emit m_desk.paperAsked(PaperName::CareCards, matter);
}

void CareSheet::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit left();
    else if (event->matches(QKeySequence::Copy))
        copy();
    else if (event->key() == Qt::Key_P && event->modifiers() == Qt::NoModifier)
        print();
    else
        QWidget::keyPressEvent(event);
}

} // namespace holdfast::app
