// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figures_place.h"

#include "app/desk/formats.h"
#include "app/desk/left_out_words.h"
#include "app/places/figures/figure_charts.h"
#include "app/places/figures/figure_rows.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QScrollBar>
#include <QStackedWidget>
#include <QTimer>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

constexpr int kQuestionsWidth = 300; // where there is room
constexpr int kLeastSheet = 560;     // next to them
// One above the other in a low window: then the place scrolls.
constexpr int kLowestQuestions = 220;
constexpr int kLowestSheet = 300;
constexpr int kTitleHeight = 52;
constexpr std::chrono::milliseconds kBeforeItIsSaid{200};

// The spans that may be looked at; the last is all there is.
constexpr std::array<std::optional<Days>, 3> kSpans{Days{90}, Days{365}, std::nullopt};

} // namespace

FiguresPlace::FiguresPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("figures"));
    auto* sheets = new QWidget;
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, sheets);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(kCardGap);
    m_row->addWidget(makeQuestions());
    m_row->addWidget(makeSheet(), 1);
    m_empty = new EmptyState(QStringLiteral("figures"),
                             tr("What the shop learns is shown here, once the first order is taken."),
                             tr("Take an order"));
    m_empty->showKey(QKeySequence(Qt::CTRL | Qt::Key_1));
    connect(m_empty, &EmptyState::acted, this,
            [this] { emit desk().placeAsked(PlaceName::FairTable, SlipTarget{}); });
    auto* emptyCard = new Card;
    emptyCard->content()->addWidget(m_empty);
    m_pages = new QStackedWidget;
    m_pages->addWidget(sheets);
    m_pages->addWidget(emptyCard);
    auto* readingCard = new Card;
    auto* reading = new Label(tr("The figures are being read."), Type::Body, &Tokens::ink2);
    reading->setAlignment(Qt::AlignCenter);
    readingCard->content()->addWidget(reading, 1);
    m_pages->addWidget(readingCard);
    m_pages->setCurrentWidget(readingCard);
    m_pages->hide(); // most shops are read before it could be said
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    whole->addWidget(m_pages);

    connect(&m_beside, &FiguresBeside::ended, this, &FiguresPlace::take);
    connect(&m_beside, &FiguresBeside::failed, &desk(), &ShopDesk::failed);
    connect(&desk(), &ShopDesk::changed, this, &FiguresPlace::refresh);
}

QWidget* FiguresPlace::makeQuestions() {
    m_questionCard = new Card(tr("What the shop can learn"));
    m_questionCard->setTitleHeight(kTitleHeight);
    m_questions = new Choice(tr("Questions"), Choice::Shape::Line);
    m_questions->setObjectName(QStringLiteral("questions"));
    m_questions->setColumns(1);
    connect(m_questions, &Choice::chosen, this, [this](int at) {
        m_question = static_cast<FigureQuestion>(at);
        showSheet();
    });
    m_questionScroll = new VerticalScroll;
    m_questionScroll->column()->setContentsMargins(kFocusRoom, kFocusRoom, kFocusRoom, kFocusRoom);
    m_questionScroll->column()->addWidget(m_questions);
    m_questionScroll->column()->addStretch(1);
    m_questionCard->content()->addWidget(m_questionScroll, 1);
    return m_questionCard;
}

QWidget* FiguresPlace::makeSheet() {
    m_sheet = new Card(QString());
    m_sheet->setTitleHeight(kTitleHeight);
    m_by = new Choice(tr("Compared by"), Choice::Shape::Segment);
    m_by->setObjectName(QStringLiteral("comparedBy"));
    m_by->setItems({{tr("Film")}, {tr("Roll")}, {tr("Press")}, {tr("Blank")}, {tr("Washing")}});
    m_by->setChosen(0);
    m_by->keepInOneLine();
    connect(m_by, &Choice::chosen, this, [this](int at) {
        if (m_shown)
            m_shown->by = kAllFaultsBy[at];
        fillQuestions();
        showSheet();
    });
    m_sheet->addToTitle(m_by);
    m_print = new Button(tr("Print the list"));
    m_print->setObjectName(QStringLiteral("printBuyingList"));
    m_print->setKey(QKeySequence(Qt::Key_P));
    connect(m_print, &Button::clicked, this, [this] { emit desk().paperAsked(PaperName::BuyingList, {}); });
    m_sheet->addToTitle(m_print);

    m_count = new Button(tr("Count the till"));
    m_count->setObjectName(QStringLiteral("countTill"));
    m_count->setKey(QKeySequence(Qt::Key_T));
    connect(m_count, &Button::clicked, this, [this] { emit desk().slipAsked(SlipName::CountTill, {}); });
    m_sheet->addToTitle(m_count);

    auto* scroll = new VerticalScroll;
    scroll->setObjectName(QStringLiteral("figureScroll"));
    m_whole = new Label({}, Type::List);
    m_whole->setObjectName(QStringLiteral("figureWhole"));
    m_whole->wrapped();
    m_whole->setContentsMargins(kCardPadding, kSpace16, kCardPadding, kSpace12);
    scroll->column()->addWidget(m_whole);
    m_holding = new HoldingChart;
    scroll->column()->addWidget(m_holding);
    m_months = new MonthsChart;
    scroll->column()->addWidget(m_months);
    m_rows = new FigureRows;
    scroll->column()->addWidget(m_rows);
    m_note = new Label({}, Type::Small, &Tokens::ink2);
    m_note->setObjectName(QStringLiteral("figureNote"));
    m_note->wrapped();
    m_note->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace16);
    scroll->column()->addWidget(m_note);
    scroll->column()->addStretch(1);
    m_sheet->content()->addWidget(scroll, 1);
    return m_sheet;
}

QString FiguresPlace::subtitle() const {
    if (!m_shown)
        return longDay(desk().now().today());
    const QString since = tr("since %1").arg(date(m_shown->figures.from));
    const auto leftOut = m_shown->figures.unread.size();
    return leftOut == 0 ? since : tr("%1, without %2").arg(since, leftOutWords(leftOut));
}

QWidget* FiguresPlace::headerTools() {
    if (!m_tools) {
        m_tools = new QWidget;
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        m_spans = new Choice(tr("Span"), Choice::Shape::Segment);
        m_spans->setObjectName(QStringLiteral("figureSpan"));
        m_spans->setItems({{tr("90 days")}, {tr("A year")}, {tr("All")}});
        m_spans->setChosen(m_span);
        m_spans->keepInOneLine();
        connect(m_spans, &Choice::chosen, this, [this](int at) {
            m_span = at;
            read();
        });
        row->addWidget(m_spans);
    }
    return m_tools;
}

void FiguresPlace::opened() {
    if (m_isStale)
        read();
    if (m_shown)
        takeKeyboard();
    else
        QTimer::singleShot(kBeforeItIsSaid, this, [this] { m_pages->show(); });
}

void FiguresPlace::takeKeyboard() {
    if (m_pages->currentIndex() == 0)
        m_questions->takeFocus(Qt::OtherFocusReason);
    else
        m_empty->setFocus(Qt::OtherFocusReason);
}

// As narrow as one of the two alone, for then the sheet goes below the questions.
QSize FiguresPlace::minimumSizeHint() const {
    return {
        std::max(m_questions->minimumSizeHint().width() + 3 * kGutter, m_sheet->minimumSizeHint().width()) +
            2 * kGutter,
        layout()->minimumSize().height()};
}

void FiguresPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

// Where a window is too narrow for both side by side, the sheet goes below the questions.
void FiguresPlace::arrange() {
    const int room = width() - 2 * kGutter - kCardGap;
    const int least = m_questions->minimumSizeHint().width() + 2 * kFocusRoom +
                      m_questionScroll->verticalScrollBar()->sizeHint().width() + 2;
    const bool isStacked = room - least < kLeastSheet;
    const int wide = std::clamp(room - kLeastSheet, least, std::max(least, kQuestionsWidth));
    m_row->setDirection(isStacked ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_row->setStretchFactor(m_questionCard, isStacked ? 1 : 0);
    m_questionCard->setMinimumWidth(isStacked ? 0 : wide);
    m_questionCard->setMaximumWidth(isStacked ? QWIDGETSIZE_MAX : wide);
    const int whole = kTitleHeight + m_questions->sizeHint().height() + 2 * kFocusRoom + 2;
    m_questionCard->setMaximumHeight(isStacked ? std::max(kLowestQuestions, std::min(whole, height() / 2))
                                               : QWIDGETSIZE_MAX);
    m_questionCard->setMinimumHeight(isStacked ? kLowestQuestions : 0);
    m_sheet->setMinimumHeight(isStacked ? kLowestSheet : 0);
}

void FiguresPlace::turnTo(const SlipTarget& matter) {
    if (matter.question)
        ask(*matter.question);
}

void FiguresPlace::ask(FigureQuestion question) {
    m_question = question;
    m_questions->setChosen(static_cast<int>(question));
    showSheet();
}

void FiguresPlace::refresh() {
    m_isStale = true;
    if (isVisible())
        read();
}

void FiguresPlace::read() {
    m_isStale = false;
    m_beside.begin(desk().file(), kSpans[static_cast<std::size_t>(m_span)], desk().now());
}

void FiguresPlace::take(const ShopFigures& figures) {
    const bool isFirst = !m_shown;
    m_shown = figuresShown(*desk().shop(), figures, kAllFaultsBy[m_by->chosenAt()]);
    m_shown->today = desk().now().today();
    m_pages->setCurrentIndex(isEmpty() ? 1 : 0);
    fillQuestions();
    showSheet();
    m_pages->show();
    if (isFirst && isVisible())
        takeKeyboard();
    emit subtitleChanged();
}

bool FiguresPlace::isEmpty() const {
    // A shop in which anything ever happened is not empty, whatever the span.
    const ShopFigures& figures = m_shown->figures;
    return figures.from >= m_shown->today && figures.handedOver.garments == 0 && figures.promises.empty() &&
           figures.films.empty() && figures.places.empty() && figures.faults.empty();
}

FigureQuestion FiguresPlace::question() const {
    return m_question;
}

void FiguresPlace::fillQuestions() {
    if (!m_shown)
        return;
    QVector<ChoiceItem> items;
    for (int at = 0; at < kFigureQuestions; ++at) {
        const FigureSheet sheet = figureSheet(static_cast<FigureQuestion>(at), *m_shown);
        items.append({sheet.question, sheet.answer.isEmpty() ? tr("nothing yet") : sheet.answer});
    }
    m_questions->setItems(items);
    m_questions->setChosen(static_cast<int>(m_question)); // asked before there was any list, too
    arrange();
}

void FiguresPlace::showSheet() {
    if (!m_shown)
        return;
    const FigureSheet sheet = figureSheet(question(), *m_shown);
    const bool isThere = !sheet.rows.isEmpty() || !sheet.whole.isEmpty();
    m_sheet->setTitle(sheet.title.isEmpty() ? sheet.question : sheet.title);
    m_by->setVisible(question() == FigureQuestion::WhatIsCommon);
    m_count->setVisible(question() == FigureQuestion::Till);
    m_print->setVisible(question() == FigureQuestion::Buy && isThere);
    m_whole->setText(isThere ? sheet.whole : sheet.empty);
    m_holding->setVisible(isThere && sheet.chart == FigureChart::Holding);
    m_months->setVisible(isThere && sheet.chart == FigureChart::Months);
    if (sheet.chart == FigureChart::Holding)
        m_holding->show(m_shown->figures.withoutFault);
    if (sheet.chart == FigureChart::Months)
        m_months->show(m_shown->figures.months);
    m_rows->setVisible(isThere);
    m_rows->show(sheet);
    m_note->setVisible(isThere);
    m_note->setText(sheet.note);
}

} // namespace holdfast::app
