// The shared widgets, as hands use them: keys, mouse, and what is read aloud.

#include "app/theme/focus_ring.h"
#include "app/theme/tokens.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/stepper.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"

#include <gtest/gtest.h>

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
    auto* button = put(new Button(QStringLiteral("New roll")));
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

TEST_F(SharedWidgets, FocusRingStandsFivePixelsAboutWhatHasTheKeyboard) {
    auto* button = put(new Button(QStringLiteral("Put in wash")));
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
