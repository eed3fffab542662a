// SPDX-License-Identifier: GPL-3.0-or-later
// The shared widgets, as hands use them: keys, mouse, and what is read aloud.

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/painted_lines.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/stepper.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QApplication>
#include <QBoxLayout>
#include <QLineEdit>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>

namespace holdfast::app {
namespace {

QVector<ChoiceItem> fourSizes() {
    ChoiceItem none{.text = QStringLiteral("XL")};
    none.isInStock = false;
    none.isChoosable = false;
    return {
        {.text = QStringLiteral("S")}, {.text = QStringLiteral("M")}, none, {.text = QStringLiteral("2XL")}};
}

class SharedWidgets : public testing::Test {
protected:
    void SetUp() override {
        setLight(*qApp, Light::Day);
        m_layout = new QVBoxLayout(&m_window);
        m_window.resize(500, 400);
    }

    void TearDown() override { setLight(*qApp, Light::Day); }

    template <typename Widget>
    Widget* put(Widget* widget) {
        m_layout->addWidget(widget);
        return widget;
    }

    void open() {
        m_window.show();
        m_window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&m_window));
    }

    QWidget m_window;
    QVBoxLayout* m_layout = nullptr;
};

TEST_F(SharedWidgets, ChoiceMovesWithArrowsPastWhatCannotBeChosenAndStopsAtTheEnds) {
    auto* choice = put(new Choice(QStringLiteral("Size"), Choice::Shape::Stacked));
    choice->setItems(fourSizes());
    choice->setChosen(0);
    open();
    QSignalSpy chosen(choice, &Choice::chosen);
    choice->takeFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_EQ(choice->chosenAt(), 1);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_EQ(choice->chosenAt(), 3);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_EQ(choice->chosenAt(), 3);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Home);
    EXPECT_EQ(choice->chosenAt(), 0);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_3);
    EXPECT_EQ(choice->chosenAt(), 0);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_2);
    EXPECT_EQ(choice->chosenAt(), 1);
    EXPECT_EQ(chosen.size(), 4);
}

TEST_F(SharedWidgets, ChoiceIsOneStopForTab) {
    auto* before = put(new Button(QStringLiteral("Before")));
    auto* choice = put(new Choice(QStringLiteral("Size"), Choice::Shape::Stacked));
    choice->setItems(fourSizes());
    choice->setChosen(1);
    auto* after = put(new Button(QStringLiteral("After")));
    open();
    before->setFocus();
    QTest::keyClick(before, Qt::Key_Tab);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("M"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), after);
}

TEST_F(SharedWidgets, ChoiceSaysNothingWhenItIsSetByTheProgram) {
    auto* choice = put(new Choice(QStringLiteral("Size"), Choice::Shape::Stacked));
    choice->setItems(fourSizes());
    QSignalSpy chosen(choice, &Choice::chosen);
    choice->setChosen(3);
    EXPECT_EQ(chosen.size(), 0);
    choice->setItems(fourSizes().mid(0, 2));
    EXPECT_EQ(choice->chosenAt(), -1);
}

TEST_F(SharedWidgets, SegmentsFlowIntoTheNextLineAndKeysFollow) {
    m_window.resize(300, 400);
    auto* choice = put(new Choice(QStringLiteral("What happened"), Choice::Shape::Segment));
    m_layout->addStretch(1);
    choice->setObjectName(QStringLiteral("kind"));
    choice->setItems({{.text = QStringLiteral("Not mirrored")},
                      {.text = QStringLiteral("Cut too deep")},
                      {.text = QStringLiteral("Not cut through")},
                      {.text = QStringLiteral("Torn")}});
    choice->setChosen(0);
    open();
    const auto tile = [&](int at) {
        return choice->findChild<QWidget*>(QStringLiteral("kind-%1").arg(at))->geometry();
    };
    // Each as wide as its words, eight apart, and no further than the room.
    EXPECT_EQ(tile(1).topLeft(), QPoint(tile(0).right() + 1 + kSpace8, tile(0).top()));
    EXPECT_EQ(tile(2).topLeft(), QPoint(0, kTarget + kSpace8));
    EXPECT_EQ(tile(3).top(), tile(2).top());
    EXPECT_GT(tile(2).width(), tile(3).width());
    EXPECT_EQ(choice->height(), 2 * kTarget + kSpace8);
    for (int at = 0; at < 4; ++at)
        EXPECT_LE(tile(at).right(), choice->width()) << at;

    choice->takeFocus();
    const auto press = [](Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); };
    press(Qt::Key_Right);
    press(Qt::Key_Down);
    EXPECT_EQ(choice->chosenAt(), 3) << "nearest below the second";
    press(Qt::Key_Left);
    press(Qt::Key_Up);
    EXPECT_EQ(choice->chosenAt(), 0);
    press(Qt::Key_Up);
    EXPECT_EQ(choice->chosenAt(), 0) << "no line above";
}

TEST_F(SharedWidgets, SegmentsBesideAFieldStayInOneLine) {
    m_window.resize(300, 400);
    auto* row = new QHBoxLayout;
    auto* field = new Field(QStringLiteral("Amount"));
    auto* choice = new Choice(QStringLiteral("Paid in"), Choice::Shape::Segment);
    choice->setItems({{.text = QStringLiteral("Cash")}, {.text = QStringLiteral("Card")}});
    choice->keepInOneLine();
    row->addWidget(field, 1);
    row->addWidget(choice);
    m_layout->addLayout(row);
    m_layout->addStretch(1);
    open();
    EXPECT_EQ(choice->width(), choice->sizeHint().width());
    EXPECT_EQ(choice->height(), field->height()) << "its tiles in the middle";
    EXPECT_EQ(field->width() + choice->width() + row->spacing(), row->geometry().width());
}

// A chosen chip and the action beside it, without the help of their places: another ground, and a tick.
TEST_F(SharedWidgets, AChosenSegmentIsNoButton) {
    auto* choice = put(new Choice(QStringLiteral("Paid in"), Choice::Shape::Segment));
    choice->setObjectName(QStringLiteral("paid"));
    choice->setItems({{.text = QStringLiteral("Cash")}, {.text = QStringLiteral("Card")}});
    choice->setChosen(0);
    auto* action = put(new Button(QStringLiteral("Take it"), Button::Kind::Primary));
    m_layout->addStretch(1);
    open();
    for (const Light light : {Light::Day, Light::Evening}) {
        setLight(*qApp, light);
        const auto drawn = [&](int at) {
            return choice->findChild<QWidget*>(QStringLiteral("paid-%1").arg(at))->grab().toImage();
        };
        const QImage chosen = drawn(0);
        const QImage other = drawn(1);
        const QPoint ground(6, chosen.height() / 2);
        const QPoint corner(chosen.width() - 4, 11); // beside the tick itself
        EXPECT_EQ(chosen.pixelColor(ground), tokens().woad);
        EXPECT_EQ(other.pixelColor(ground), tokens().card);
        EXPECT_EQ(action->grab().toImage().pixelColor(ground), tokens().indigo);
        EXPECT_EQ(chosen.pixelColor(corner), tokens().indigo) << "the tick's corner";
        EXPECT_EQ(other.pixelColor(QPoint(other.width() - 4, 11)), tokens().card);
    }
}

TEST_F(SharedWidgets, EmptyStateShowsTheKeyThatBeginsAndActsOnIt) {
    auto* empty = put(new EmptyState(QStringLiteral("film-shelf"), QStringLiteral("Rolls stand here."),
                                     QStringLiteral("Receive a roll")));
    const int bare = empty->button()->width();
    empty->setKey(QKeySequence(Qt::Key_N));
    EXPECT_GT(empty->button()->width(), bare) << "its cap";
    open();
    QSignalSpy acted(empty, &EmptyState::acted);
    empty->setFocus();
    EXPECT_TRUE(empty->button()->hasFocus());
    QTest::keyClick(empty->button(), Qt::Key_N);
    QTest::keyClick(empty->button(), Qt::Key_Return);
    EXPECT_EQ(acted.size(), 2);
    empty->hide();
    QTest::keyClick(&m_window, Qt::Key_N);
    EXPECT_EQ(acted.size(), 2) << "only while it is seen";
}

TEST_F(SharedWidgets, ButtonIsPressedByItsKeyByEnterAndBySpace) {
    auto* button = put(new Button(QStringLiteral("Back a step")));
    button->setKey(QKeySequence(QStringLiteral("B")));
    auto* other = put(new Button(QStringLiteral("Other")));
    open();
    QSignalSpy clicked(button, &QAbstractButton::clicked);
    other->setFocus();
    QTest::keyClick(other, Qt::Key_B);
    EXPECT_EQ(clicked.size(), 1);
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Return);
    QTest::keyClick(button, Qt::Key_Space);
    EXPECT_EQ(clicked.size(), 3);
}

TEST_F(SharedWidgets, LetterKeysRestWhileAFieldIsTypedIn) {
    auto* field = put(new Field(QStringLiteral("Name")));
    auto* button = put(new Button(QStringLiteral("Receive a roll")));
    button->setKey(QKeySequence(QStringLiteral("N")));
    open();
    QSignalSpy clicked(button, &QAbstractButton::clicked);
    field->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_N);
    EXPECT_EQ(clicked.size(), 0);
    EXPECT_EQ(field->text(), QStringLiteral("n"));
}

TEST_F(SharedWidgets, ButtonThatCannotSaysWhyAndDoesNothing) {
    auto* button = put(new Button(QStringLiteral("Hand over"), Button::Kind::Primary));
    button->setKey(QKeySequence(QStringLiteral("H")));
    button->setCannot(QStringLiteral("418-b rests until Thursday 10:02"));
    open();
    QSignalSpy clicked(button, &QAbstractButton::clicked);
    QTest::keyClick(&m_window, Qt::Key_H);
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_EQ(clicked.size(), 0);
    EXPECT_EQ(button->toolTip(), QStringLiteral("418-b rests until Thursday 10:02"));
    EXPECT_EQ(button->accessibleDescription(), button->toolTip());
    button->setCannot({});
    QTest::keyClick(&m_window, Qt::Key_H);
    EXPECT_EQ(clicked.size(), 1);
}

TEST_F(SharedWidgets, NextKeepsAllItsWordsInANarrowColumn) {
    auto* next = new Button(QStringLiteral("Take order"), Button::Kind::Next, &m_window);
    next->setSecondText(QStringLiteral("£10.00 now"));
    next->showKey(QKeySequence(Qt::Key_Return));
    EXPECT_LE(next->minimumSizeHint().width(), 338);
    EXPECT_GT(next->sizeHint().width(), 338);
    EXPECT_EQ(next->height(), kNextTarget);
}

TEST_F(SharedWidgets, FieldSaysWhatIsWrongAndGrowsForIt) {
    auto* field = put(new Field(QStringLiteral("Dwell")));
    field->setText(QStringLiteral("120"));
    open();
    const int plain = field->sizeHint().height();
    field->setError(QStringLiteral("Dwell is 1 to 60 s."));
    EXPECT_GT(field->sizeHint().height(), plain);
    EXPECT_EQ(field->editor()->accessibleName(), QStringLiteral("Dwell"));
    EXPECT_EQ(field->editor()->accessibleDescription(), QStringLiteral("Dwell is 1 to 60 s."));
    field->setError({});
    EXPECT_EQ(field->sizeHint().height(), plain);
}

TEST_F(SharedWidgets, FieldTellsWhatIsTypedButNotWhatIsSet) {
    auto* field = put(new Field(QStringLiteral("For")));
    open();
    QSignalSpy edited(field, &Field::edited);
    QSignalSpy accepted(field, &Field::accepted);
    field->setText(QStringLiteral("Bronagh"));
    EXPECT_EQ(edited.size(), 0);
    field->setFocus();
    QTest::keyClick(field->editor(), Qt::Key_X);
    QTest::keyClick(field->editor(), Qt::Key_Return);
    EXPECT_EQ(edited.size(), 1);
    EXPECT_EQ(accepted.size(), 1);
}

TEST_F(SharedWidgets, StepperStepsTypesAndStaysInItsRange) {
    auto* stepper = put(new Stepper(QStringLiteral("Gap")));
    stepper->setRange(0, 40);
    stepper->setSuffix(QStringLiteral(" mm"));
    stepper->setValue(8);
    open();
    QSignalSpy stepped(stepper, &Stepper::stepped);
    stepper->setFocus();
    QTest::keyClick(stepper, Qt::Key_Up);
    EXPECT_EQ(stepper->value(), 9);
    QTest::keyClick(stepper, Qt::Key_Minus);
    EXPECT_EQ(stepper->value(), 8);
    QTest::keyClick(stepper, Qt::Key_1);
    QTest::keyClick(stepper, Qt::Key_2);
    EXPECT_EQ(stepper->value(), 12);
    QTest::keyClick(stepper, Qt::Key_9); // 129 is not allowed, so a new number begins
    EXPECT_EQ(stepper->value(), 9);
    QTest::keyClick(stepper, Qt::Key_End);
    QTest::keyClick(stepper, Qt::Key_Up);
    EXPECT_EQ(stepper->value(), 40);
    EXPECT_EQ(stepper->accessibleName(), QStringLiteral("Gap, 40 mm"));
    QTest::mouseClick(stepper, Qt::LeftButton, {}, QPoint(10, 20));
    EXPECT_EQ(stepper->value(), 39);
    EXPECT_EQ(stepped.last().first().toInt(), 39);
}

TEST_F(SharedWidgets, SwitchTurnsWithEnterAndWithAClickAnywhere) {
    auto* mirror = put(new Switch(QStringLiteral("Mirror")));
    open();
    mirror->setFocus();
    QTest::keyClick(mirror, Qt::Key_Return);
    EXPECT_TRUE(mirror->isChecked());
    QTest::mouseClick(mirror, Qt::LeftButton, {}, QPoint(3, mirror->height() / 2));
    EXPECT_FALSE(mirror->isChecked());
}

TEST_F(SharedWidgets, SewnTabsMoveWithKeysAndMouse) {
    auto* tabs = put(new SewnTabs(QStringLiteral("Films")));
    tabs->setTabs({{QStringLiteral("Dusk"), QStringLiteral("9 to cut")},
                   {QStringLiteral("Oyster")},
                   {QStringLiteral("Gorse")}});
    open();
    QSignalSpy chosen(tabs, &SewnTabs::chosen);
    EXPECT_EQ(tabs->currentAt(), 0);
    tabs->setFocus();
    QTest::keyClick(tabs, Qt::Key_Left);
    EXPECT_EQ(chosen.size(), 0);
    QTest::keyClick(tabs, Qt::Key_End);
    EXPECT_EQ(tabs->currentAt(), 2);
    EXPECT_EQ(tabs->accessibleName(), QStringLiteral("Films, Gorse"));
    QTest::mouseClick(tabs, Qt::LeftButton, {}, QPoint(30, 30));
    EXPECT_EQ(tabs->currentAt(), 0);
    EXPECT_EQ(chosen.size(), 2);
}

// What is typed into tabs finds one; it is no shortcut of the place.
TEST_F(SharedWidgets, SewnTabsTakeWhatIsTyped) {
    auto* tabs = put(new SewnTabs(QStringLiteral("Films")));
    tabs->setTabs({{QStringLiteral("Dusk")}, {QStringLiteral("Slack tide")}, {QStringLiteral("Chalk")}});
    auto* cut = put(new Button(QStringLiteral("Mark cut")));
    cut->setKey(QKeySequence(Qt::Key_C));
    open();
    QSignalSpy clicks(cut, &QPushButton::clicked);
    QSignalSpy left(tabs, &SewnTabs::left);
    tabs->setFocus();
    QTest::keyClicks(tabs, QStringLiteral("chalk"));
    EXPECT_EQ(tabs->currentAt(), 2);
    EXPECT_EQ(clicks.size(), 0);
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    QTest::keyClicks(tabs, QStringLiteral("tid"));
    EXPECT_EQ(tabs->currentAt(), 1) << "any word of it";
    QTest::keyClick(tabs, Qt::Key_Return);
    EXPECT_EQ(left.size(), 1);
}

class ThreeLines : public PaintedLines {
public:
    ThreeLines()
        : PaintedLines(QStringLiteral("threeLines"), QStringLiteral("Three lines"), nullptr) {}

    int at() const { return currentLine(); }
    int done = -1;

protected:
    int lineCount() const override { return 3; }
    int heightOf(int) const override { return 40; }
    void paintOne(QPainter&, int, const QRectF&, bool) override {}
    QString spokenLine(int line) const override { return QStringLiteral("Line %1").arg(line); }
    bool isOnButton(int, const QRectF&, const QPointF&) const override { return false; }
    void doWhatItOffers(int line) override { done = line; }
};

TEST_F(SharedWidgets, EachPaintedLineIsReadAloudMovedToAndPressed) {
    auto* lines = put(new ThreeLines);
    open();
    QAccessibleInterface* list = QAccessible::queryAccessibleInterface(lines);
    ASSERT_NE(list, nullptr);
    EXPECT_EQ(list->role(), QAccessible::List);
    EXPECT_EQ(list->text(QAccessible::Name), QStringLiteral("Three lines"));
    ASSERT_EQ(list->childCount(), 3);
    EXPECT_EQ(list->child(3), nullptr);
    QAccessibleInterface* last = list->child(2);
    EXPECT_EQ(last->role(), QAccessible::ListItem);
    EXPECT_EQ(last->text(QAccessible::Name), QStringLiteral("Line 2"));
    EXPECT_EQ(last->parent(), list);
    EXPECT_EQ(list->indexOfChild(last), 2);
    EXPECT_EQ(last->rect(), QRect(lines->mapToGlobal(QPoint(0, 80)), QSize(lines->width(), 40)));
    EXPECT_EQ(list->childAt(last->rect().center().x(), last->rect().center().y()), last);
    EXPECT_FALSE(last->state().focused);
    QAccessibleActionInterface* act = last->actionInterface();
    ASSERT_NE(act, nullptr);
    act->doAction(QAccessibleActionInterface::setFocusAction());
    EXPECT_EQ(lines->at(), 2);
    EXPECT_TRUE(last->state().focused);
    EXPECT_EQ(list->focusChild(), last);
    list->child(1)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(lines->done, 1);
    EXPECT_FALSE(last->state().selected);
}

TEST_F(SharedWidgets, EachSewnTabIsReadAloudAndGoneTo) {
    auto* tabs = put(new SewnTabs(QStringLiteral("Films")));
    tabs->setTabs({{QStringLiteral("Dusk"), QStringLiteral("9 to cut")}, {QStringLiteral("Oyster")}});
    open();
    QSignalSpy chosen(tabs, &SewnTabs::chosen);
    QAccessibleInterface* list = QAccessible::queryAccessibleInterface(tabs);
    ASSERT_EQ(list->childCount(), 2);
    EXPECT_EQ(list->child(0)->role(), QAccessible::PageTab);
    EXPECT_EQ(list->child(0)->text(QAccessible::Name), QStringLiteral("Dusk, 9 to cut"));
    EXPECT_TRUE(list->child(0)->state().selected);
    list->child(1)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(chosen.size(), 1);
    EXPECT_EQ(tabs->currentAt(), 1);
}

TEST_F(SharedWidgets, StepperLeavesLettersToThePlaceAndSaysItsValue) {
    auto* stepper = put(new Stepper(QStringLiteral("Gap")));
    auto* cut = put(new Button(QStringLiteral("Mark cut")));
    cut->setKey(QKeySequence(Qt::Key_C));
    open();
    QSignalSpy clicks(cut, &QPushButton::clicked);
    stepper->setFocus();
    QTest::keyClick(stepper, Qt::Key_C);
    EXPECT_EQ(clicks.size(), 1);
    QTest::keyClick(stepper, Qt::Key_7);
    QAccessibleInterface* access = QAccessible::queryAccessibleInterface(stepper);
    ASSERT_NE(access->valueInterface(), nullptr);
    EXPECT_EQ(access->valueInterface()->currentValue().toInt(), 7);
    QSignalSpy stepped(stepper, &Stepper::stepped);
    stepper->setValue(9);
    EXPECT_EQ(stepped.size(), 0) << "not by the person";
    QTest::mouseClick(stepper, Qt::LeftButton, {}, QPoint(stepper->width() - 10, 20));
    EXPECT_EQ(stepper->value(), 10);
    EXPECT_EQ(stepped.size(), 1);
}

TEST_F(SharedWidgets, KeyHintPutsTheKeyboardOnItsSection) {
    auto* choice = new Choice(QStringLiteral("Size"), Choice::Shape::Stacked);
    choice->setItems(fourSizes());
    choice->setChosen(3);
    auto* hint = put(new KeyHint(QStringLiteral("Size"), QKeySequence(QStringLiteral("S"))));
    put(choice);
    hint->jumpTo(choice);
    open();
    QTest::keyClick(&m_window, Qt::Key_S);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("2XL"));
}

TEST_F(SharedWidgets, KeyHintIsAButtonThatDoesWhatItsKeyDoes) {
    auto* field = put(new Field(QStringLiteral("Name")));
    auto* hint = put(new KeyHint(QStringLiteral("add to the wash"), QKeySequence(Qt::Key_F5),
                                 KeyHint::Order::KeyThenWords));
    auto* words = put(new KeyHint(QStringLiteral("10 mm"), QKeySequence(Qt::Key_Shift)));
    int done = 0;
    hint->actWithin(&m_window, [&] { ++done; });
    open();
    field->setFocus();
    QTest::mouseClick(hint, Qt::LeftButton);
    EXPECT_EQ(done, 1);
    QTest::keyClick(&m_window, Qt::Key_F5);
    EXPECT_EQ(done, 2);
    EXPECT_EQ(QApplication::focusWidget(), field->editor()) << "a click leaves the keyboard where it was";
    EXPECT_GE(hint->height(), 32);
    const auto* spoken = QAccessible::queryAccessibleInterface(hint);
    ASSERT_NE(spoken, nullptr);
    EXPECT_EQ(spoken->role(), QAccessible::Button);
    EXPECT_EQ(spoken->text(QAccessible::Name), QStringLiteral("add to the wash"));
    EXPECT_TRUE(words->testAttribute(Qt::WA_TransparentForMouseEvents)) << "words only";
}

TEST_F(SharedWidgets, FocusRingStandsFivePixelsAboutWhatHasTheKeyboard) {
    auto* button = put(new Button(QStringLiteral("Put in the wash")));
    auto* field = put(new Field(QStringLiteral("Name")));
    open();
    button->setFocus();
    auto* ring = m_window.findChild<QWidget*>(QStringLiteral("focusRing"));
    ASSERT_NE(ring, nullptr);
    EXPECT_TRUE(ring->isVisible());
    EXPECT_EQ(ring->geometry(),
              button->geometry().adjusted(-kFocusRoom, -kFocusRoom, kFocusRoom, kFocusRoom));
    field->setError(QStringLiteral("Say a name."));
    field->setFocus();
    QApplication::processEvents();
    EXPECT_EQ(ring->height(), 44 + 2 * kFocusRoom); // about the field, not about the words below
    m_window.resize(640, 500);
    QApplication::processEvents();
    EXPECT_EQ(ring->width(), field->width() + 2 * kFocusRoom);
    button->setFocus();
    button->hide();
    EXPECT_FALSE(ring->isVisible() && ring->geometry().contains(button->geometry()));
}

TEST_F(SharedWidgets, ScrollBringsTheChildWithTheKeyboardIntoView) {
    auto* scroll = put(new VerticalScroll);
    Button* last = nullptr;
    for (int at = 0; at < 30; ++at) {
        last = new Button(QStringLiteral("Button"));
        scroll->column()->addWidget(last);
    }
    open();
    EXPECT_EQ(scroll->verticalScrollBar()->value(), 0);
    last->setFocus(Qt::TabFocusReason);
    const QRect seen(scroll->viewport()->mapFromGlobal(last->mapToGlobal(QPoint(0, 0))), last->size());
    EXPECT_TRUE(scroll->viewport()->rect().contains(seen));
}

TEST_F(SharedWidgets, LabelsFollowTheLight) {
    auto* label = put(new Label(QStringLiteral("Held"), Type::SmallStrong, &Tokens::madder));
    open();
    EXPECT_EQ(label->palette().color(QPalette::WindowText), tokens(Light::Day).madder);
    setLight(*qApp, Light::Evening);
    EXPECT_EQ(label->palette().color(QPalette::WindowText), tokens(Light::Evening).madder);
    EXPECT_EQ(qApp->palette().color(QPalette::Window), tokens(Light::Evening).ground);
}

TEST_F(SharedWidgets, BannerWrapsAllItsWordsAndOffersWhatFreesTheHold) {
    auto* banner = put(new Banner(Tone::Held, QStringLiteral("Roll R-17 is past its use-by by 6 days."),
                                  QStringLiteral("A strip that peels clean gives it 30 more days.")));
    EXPECT_GT(banner->heightForWidth(200), banner->heightForWidth(900));
    const int without = banner->heightForWidth(200);
    banner->setAction(QStringLiteral("Press a test strip"));
    EXPECT_GE(banner->heightForWidth(200), without + kTarget);
    open();
    QSignalSpy acted(banner, &Banner::acted);
    auto* action = banner->findChild<Button*>(QStringLiteral("bannerAction"));
    ASSERT_NE(action, nullptr);
    QTest::mouseClick(action, Qt::LeftButton);
    EXPECT_EQ(acted.size(), 1);
}

TEST_F(SharedWidgets, CardKeepsItsCornersAboveWhatItHolds) {
    auto* card = put(new Card(QStringLiteral("Held")));
    auto* filling = new QWidget;
    filling->setAutoFillBackground(true);
    QPalette loud;
    loud.setColor(QPalette::Window, Qt::magenta);
    filling->setPalette(loud);
    card->content()->addWidget(filling);
    open();
    const QImage image = m_window.grab().toImage();
    const QRect box = card->geometry();
    EXPECT_EQ(image.pixelColor(box.bottomRight()), tokens().ground);
    EXPECT_EQ(image.pixelColor(box.center().x(), box.bottom()), tokens().thread);
    EXPECT_EQ(image.pixelColor(box.center().x(), box.bottom() - 4), QColor(Qt::magenta));
}

} // namespace
} // namespace holdfast::app
