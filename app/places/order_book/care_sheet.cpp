// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/care_sheet.h"

#include "app/desk/formats.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/order_actions.h"

#include <QBoxLayout>
#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>

namespace holdfast::app {

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
    m_view = view;
    m_garments = view.pressed();
    const bool isOver = m_garments.empty();
    // After the hand-over the text stays, to be copied or read once more.
    if (isOver)
        for (const Garment* garment : view.garments())
            if (garment->handedOverAt)
                m_garments.push_back(garment);
    const Order& order = view.order();
    m_title->setText(tr("Care of order %1").arg(order.number));
    m_note->setVisible(!order.note.empty());
    m_note->setText(words(order.note));

    const auto all = view.garments().size();
    const auto behind = isOver ? 0 : all - m_garments.size();
    m_waits->setVisible(behind > 0);
    m_waits->set(Tone::Caution, tr("%1 of %2 garments go now.").arg(m_garments.size()).arg(all),
                 tr("The others are not pressed yet."));

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
    m_handOver->setCannot(isOver ? tr("Everything of this order was handed over.") : QString());
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
    if (m_desk.done(db::handOver(m_desk.file(), m_view->id, m_desk.now())))
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
