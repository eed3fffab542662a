// SPDX-License-Identifier: GPL-3.0-or-later
// Forms that are left half filled: what was typed is there again, until it is done or cleared, and no key
// undoes what lies behind an open form.

#include "app/desk/machine_settings.h"
#include "app/shell/main_window.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/colour_rows.h"
#include "app/slips/option_list.h"
#include "app/slips/typed_values.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "app/widgets/vertical_scroll.h"
#include "tests/app/slips_fixture.h"

#include <QAbstractButton>
#include <QApplication>
#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollBar>
#include <QSet>
#include <QTest>

namespace holdfast::app::test {
namespace {

class LeftSlips : public ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    Workshop& openWorkshop() {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
        return *m_window->workshop();
    }
    Workshop& workshop() { return *m_window->workshop(); }
    SlipEdge& edge() { return *workshop().slipEdge(); }
    std::size_t entries() { return m_window->desk()->file().recent(1000).size(); }

    template <class Wanted>
    Wanted* find(const char* name) {
        return edge().slip() ? edge().slip()->findChild<Wanted*>(QLatin1String(name)) : nullptr;
    }
    QString textOf(const char* field) { return find<Field>(field)->text(); }
    void typeInto(const char* field, const QString& text) {
        find<Field>(field)->editor()->setFocus(Qt::TabFocusReason);
        typeText(text);
    }
    void hit(Qt::Key key, Qt::KeyboardModifiers with = {}) {
        QTest::keyClick(QApplication::focusWidget(), key, with);
    }
    // How far the form is scrolled down: where a control is does not depend on it.
    QPoint scrolled() {
        const auto* form = edge().slip()->findChild<VerticalScroll*>();
        return form ? QPoint(0, form->verticalScrollBar()->value()) : QPoint();
    }
    bool saysAsLeft() {
        const auto* line = find<QWidget>("asLeft");
        return line && line->isVisible() && !line->visibleRegion().isEmpty();
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(LeftSlips, WhatWasTypedIsThereAgainAfterEscapeAndAfterAnotherPlace) {
    stockUsualShop();
    openWorkshop();
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_FALSE(saysAsLeft());
    typeInto("name", QStringLiteral("Smock"));
    find<QAbstractButton>("addColour")->click();
    typeText(QStringLiteral("Ash grey"));
    hit(Qt::Key_Escape);
    ASSERT_FALSE(edge().isOpen());
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_TRUE(saysAsLeft());
    EXPECT_EQ(textOf("name"), QStringLiteral("Smock"));
    ASSERT_NE(find<Field>("colour-1"), nullptr);
    EXPECT_EQ(textOf("colour-1"), QStringLiteral("Ash grey"));
    workshop().turnTo(PlaceName::FilmShelf);
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_EQ(textOf("name"), QStringLiteral("Smock"));
}

// Text of another size opens the window again, as a new process does: from the file alone.
TEST_F(LeftSlips, WhatWasTypedIsThereAgainInTheWindowWithTextOfAnotherSize) {
    stockUsualShop();
    openWorkshop();
    workshop().showSlip(SlipName::AddStyle, {});
    typeInto("name", QStringLiteral("Smock"));
    find<QAbstractButton>("addColour")->click();
    typeText(QStringLiteral("Ash grey"));
    hit(Qt::Key_Escape);
    workshop().act(ShellAct::LargerText);
    QTRY_VERIFY(m_window->isToReopen());
    m_window.reset();
    openWorkshop();
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_TRUE(saysAsLeft());
    EXPECT_EQ(textOf("name"), QStringLiteral("Smock"));
    ASSERT_NE(find<Field>("colour-1"), nullptr);
    EXPECT_EQ(textOf("colour-1"), QStringLiteral("Ash grey"));
    hit(Qt::Key_Escape);
    // Handed on once: a window that is opened on another day begins with nothing typed.
    m_window.reset();
    openWorkshop();
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_FALSE(saysAsLeft());
    keepTextSize(kUsualTextSize);
}

TEST_F(LeftSlips, OrderOfLayersIsThereAgain) {
    const UsualShop usual = stockUsualShop();
    GarmentDraft garment = aGarment(usual);
    garment.decals.push_back(garment.decals.front());
    garment.decals.back().content = Artwork{"waves"};
    const auto taken = takeOrder({garment});
    SlipTarget about;
    about.order = taken.id;
    about.garment = garmentsOf(taken.id).front();
    openWorkshop();
    workshop().showSlip(SlipName::Layers, about);
    const auto first = [&] { return find<OptionList>("layers")->model()->index(0, 0).data().toString(); };
    const QString before = first();
    hit(Qt::Key_End); // only looked at
    hit(Qt::Key_Escape);
    workshop().showSlip(SlipName::Layers, about);
    EXPECT_FALSE(saysAsLeft());
    find<QAbstractButton>("layerDown")->click();
    ASSERT_NE(first(), before);
    const QString ordered = first();
    hit(Qt::Key_Escape);
    workshop().showSlip(SlipName::Layers, about);
    EXPECT_TRUE(saysAsLeft());
    EXPECT_EQ(first(), ordered);
    hit(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(edge().isOpen());
    const auto& decals = m_window->desk()->shop()->facts.garments.at(*about.garment).decals;
    const auto& lowest = *std::ranges::min_element(decals, {}, &Decal::layer);
    EXPECT_EQ(std::get<Artwork>(lowest.content).name, "waves");
}

TEST_F(LeftSlips, ClearingShowsTheFormAsItBegan) {
    stockUsualShop();
    openWorkshop();
    workshop().showSlip(SlipName::AddStyle, {});
    typeInto("name", QStringLiteral("Smock"));
    hit(Qt::Key_Escape);
    workshop().showSlip(SlipName::AddStyle, {});
    find<QAbstractButton>("clearForm")->click();
    ASSERT_TRUE(edge().isOpen());
    EXPECT_FALSE(saysAsLeft());
    EXPECT_EQ(textOf("name"), QString());
    EXPECT_TRUE(edge().hasKeyboard());
    hit(Qt::Key_Escape);
    workshop().showSlip(SlipName::AddStyle, {});
    EXPECT_FALSE(saysAsLeft());
}

TEST_F(LeftSlips, FormAboutAnotherThingBeginsFreshAndOneThatIsDoneToo) {
    const UsualShop usual = stockUsualShop();
    const auto other = addStyle("Apron");
    openWorkshop();
    SlipTarget tee;
    tee.style = usual.style;
    SlipTarget apron;
    apron.style = other;
    workshop().showSlip(SlipName::MarkNotPrewashed, tee);
    typeInto("reason", QStringLiteral("it shrinks"));
    hit(Qt::Key_Escape);
    workshop().showSlip(SlipName::MarkNotPrewashed, apron);
    EXPECT_FALSE(saysAsLeft());
    EXPECT_EQ(textOf("reason"), QString());
    workshop().showSlip(SlipName::MarkNotPrewashed, tee);
    EXPECT_EQ(textOf("reason"), QStringLiteral("it shrinks"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_FALSE(edge().isOpen());
    workshop().showSlip(SlipName::MarkNotPrewashed, tee);
    EXPECT_FALSE(saysAsLeft()) << "it was done";
}

TEST_F(LeftSlips, UndoDoesNotGoBehindAnOpenForm) {
    stockUsualShop();
    openWorkshop();
    const auto before = entries();
    workshop().showSlip(SlipName::AddFilm, {});
    for (int press = 0; press < 3; ++press)
        hit(Qt::Key_Z, Qt::ControlModifier);
    hit(Qt::Key_Tab);
    hit(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(edge().isOpen());
    EXPECT_EQ(entries(), before);
}

// Tab in every form: to each control once, and never to one above, nor to one at the left in the same row.
TEST_F(LeftSlips, TabGoesThroughEveryFormAsItIsRead) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual, "L")});
    SlipTarget about;
    about.order = taken.id;
    about.garment = garmentsOf(taken.id).front();
    about.style = usual.style;
    about.film = usual.film;
    about.roll = usual.roll;
    about.press = usual.press;
    about.place = usual.place;
    about.lot = usual.unwashed;
    openWorkshop();
    int forms = 0;
    for (int at = 0; at <= static_cast<int>(SlipName::Settings); ++at) {
        workshop().showSlip(static_cast<SlipName>(at), about);
        if (!edge().isOpen())
            continue;
        ++forms;
        const std::string title = edge().slip()->title().toStdString();
        auto* leave = edge().findChild<QWidget*>(QStringLiteral("slipLeave"));
        leave->setFocus(Qt::TabFocusReason);
        QRect before;
        QSet<QWidget*> seen;
        for (hit(Qt::Key_Tab); QApplication::focusWidget() != leave; hit(Qt::Key_Tab)) {
            QWidget* now = QApplication::focusWidget();
            ASSERT_TRUE(edge().hasKeyboard()) << title;
            ASSERT_FALSE(seen.contains(now))
                << title << " goes in circles at " << now->objectName().toStdString();
            seen.insert(now);
            const auto* action = edge().slip()->findChild<QWidget*>(QStringLiteral("slipAction"));
            const QRect there(now->mapTo(&edge(), QPoint()) + scrolled(), now->size());
            if (!before.isNull() && now != action) {
                EXPECT_GT(there.bottom(), before.top()) << title << ", " << now->objectName().toStdString();
                const bool isInItsRow =
                    there.center().y() < before.bottom() && there.center().y() > before.top();
                EXPECT_TRUE(!isInItsRow || there.left() >= before.left())
                    << title << ", " << now->objectName().toStdString();
            }
            before = there;
        }
        const auto* action = edge().slip()->findChild<QWidget*>(QStringLiteral("slipAction"));
        EXPECT_TRUE(!seen.isEmpty() || !action->isEnabled()) << title; // no load is there to be marked dry
    }
    EXPECT_GE(forms, 25);
}

// ── every form, by its controls ──

class LeftForms : public SlipsFixture {
protected:
    // Another value than it has in every control that can be given one.
    static void fill(QWidget& form) {
        for (auto* field : form.findChildren<Field*>())
            if (field->isVisible() && field->isEnabled()) {
                field->setText(field->text() + QStringLiteral("7"));
                emit field->edited(field->text());
            }
        for (auto* field : form.findChildren<LongField*>())
            field->editor()->insertPlainText(QStringLiteral("x"));
        for (auto* turned : form.findChildren<QCheckBox*>())
            if (turned->isVisible())
                turned->click();
        for (auto* choice : form.findChildren<Choice*>())
            if (choice->isVisible() && choice->items().size() > 1) {
                const int other = choice->chosenAt() == 0 ? 1 : 0;
                choice->setChosen(other);
                emit choice->chosen(other);
            }
        for (auto* list : form.findChildren<OptionList*>())
            if (list->model()->rowCount() > 1)
                list->setCurrentIndex(list->model()->index(list->chosenAt() == 1 ? 0 : 1, 0));
    }
};

TEST_F(LeftForms, EveryFormSaysWhatWasTypedAndTakesItBack) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual, "L")});
    SlipTarget about;
    about.order = taken.id;
    about.garment = garmentsOf(taken.id).front();
    about.style = usual.style;
    about.film = usual.film;
    about.roll = usual.roll;
    about.press = usual.press;
    about.place = usual.place;
    about.lot = usual.unwashed;
    int forms = 0;
    for (int at = 0; at <= static_cast<int>(SlipName::Settings); ++at) {
        const auto name = static_cast<SlipName>(at);
        if (!open(name, about))
            continue;
        EXPECT_TRUE(slip().typed().isEmpty()) << "nothing was typed yet in form " << at;
        fill(slip().form());
        const QVariantMap typed = slip().typed();
        if (typed.isEmpty())
            continue; // nothing can be typed in it
        ++forms;
        open(name, about);
        slip().putBack(typed);
        for (auto each = typed.begin(); each != typed.end(); ++each)
            EXPECT_EQ(slip().typed().value(each.key()), *each)
                << slip().title().toStdString() << ", " << each.key().toStdString();
    }
    EXPECT_GE(forms, 25);
}

TEST_F(LeftForms, ColourWithoutANameIsRefusedAndItsRowGetsTheKeyboard) {
    open(SlipName::AddStyle);
    type(QStringLiteral("name"), QStringLiteral("Smock"));
    choose(QStringLiteral("outline"), 1);
    type(QStringLiteral("sizes"), QStringLiteral("M"));
    type(QStringLiteral("weight"), QStringLiteral("240"));
    type(QStringLiteral("cost"), QStringLiteral("7.50"));
    submit();
    EXPECT_FALSE(errorAt("colours").isEmpty());
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("colour-0Editor"));
    typeText(QStringLiteral("Moss"));
    find<QAbstractButton>(QStringLiteral("addColour"))->click();
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("colour-1Editor"));
    submit();
    EXPECT_TRUE(errorAt("colours").contains(QStringLiteral("Colour 2"))) << errorAt("colours").toStdString();
    EXPECT_FALSE(isFinished());
    find<QAbstractButton>(QStringLiteral("removeColour-1"))->click();
    EXPECT_EQ(find<Field>(QStringLiteral("colour-1")), nullptr);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(desk().shop()->facts.styles.begin()->colours.size(), 1U);
}

TEST_F(LeftForms, NewRowComesIntoView) {
    open(SlipName::AddStyle);
    for (int row = 0; row < 6; ++row) {
        find<QAbstractButton>(QStringLiteral("addColour"))->click();
        QTest::qWait(1);
        const QWidget* focused = QApplication::focusWidget();
        EXPECT_EQ(focused->visibleRegion().boundingRect(), focused->rect()) << row;
    }
}

TEST_F(LeftForms, SettingsFormBeginsInItsFirstFieldAndEnterGoesOn) {
    SlipTarget matter;
    for (const auto& [part, first] : {std::pair{SettingsPart::Money, "depositPercentEditor"},
                                      {SettingsPart::Washing, "washerHoldsEditor"},
                                      {SettingsPart::Cutting, "cutTakesEditor"}}) {
        matter.settings = part;
        open(SlipName::Settings, matter);
        EXPECT_EQ(QApplication::focusWidget()->objectName(), QLatin1String(first));
        press(Qt::Key_Return);
        EXPECT_FALSE(isFinished());
    }
}

TEST_F(LeftForms, LongTextShowsItsBeginningAndWraps) {
    SlipTarget matter;
    matter.settings = SettingsPart::Shop;
    open(SlipName::Settings, matter);
    auto* address = find<LongField>(QStringLiteral("collectAt"));
    ASSERT_NE(address, nullptr);
    const int two = address->height();
    address->editor()->setFocus(Qt::TabFocusReason);
    const QString text =
        QStringLiteral("The Net Loft, 4 Creek Lane, up the stairs behind the boat shed, Tuesday to Saturday, "
                       "ten to four, or ring the bell");
    typeText(text);
    QTest::qWait(1);
    EXPECT_GT(address->height(), two) << "as many lines as there are";
    press(Qt::Key_Return);
    EXPECT_EQ(address->text(), text) << "Enter goes on and breaks no line";
    EXPECT_NE(QApplication::focusWidget(), address->editor());
    auto* name = find<Field>(QStringLiteral("shopName"));
    name->setText(QString(200, u'n'));
    EXPECT_EQ(name->editor()->cursorPosition(), 0);
    name->editor()->setFocus(Qt::TabFocusReason);
    EXPECT_EQ(name->editor()->selectedText().size(), 200);
    EXPECT_EQ(name->editor()->cursorPosition(), 0) << "the beginning is seen while all is selected";
}

TEST_F(LeftForms, SafetyNoteOfAPressIsInViewWhereverTheFormIsOpened) {
    for (const int height : {668, 480, 380}) {
        open(SlipName::AddPress);
        slip().window()->resize(390, height);
        QTest::qWait(1);
        bool isSeen = false;
        for (auto* label : slip().findChildren<QLabel*>())
            if (label->text().contains(QStringLiteral("burns")))
                isSeen = label->visibleRegion().boundingRect() == label->rect();
        EXPECT_TRUE(isSeen) << height;
        const auto* action = find<QAbstractButton>(QStringLiteral("slipAction"));
        EXPECT_EQ(action->visibleRegion().boundingRect(), action->rect());
    }
}

} // namespace
} // namespace holdfast::app::test
