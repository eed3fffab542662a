// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The fair table over the usual shop, shown as a window, with hands on its keys.

#include "app/places/fair_table/fair_table_place.h"
#include "app/widgets/banner.h"
#include "app/widgets/field.h"
#include "db/tables/order_book.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::app::test {

class FairTable : public ShopFixture {
protected:
    void TearDown() override { leave(); }

    // The table over the usual shop, as large as the shell makes it.
    FairTablePlace& open() {
        m_place = std::make_unique<FairTablePlace>(desk());
        showWindow(*m_place, {1270, 708});
        m_place->opened();
        return *m_place;
    }
    void leave() { m_place.reset(); }

    FairTablePlace& place() { return *m_place; }
    FairTableModel& table() { return m_place->model(); }
    const TableDraft& draft() { return table().draft(); }

    template <class Widget>
    Widget& child(const char* name) {
        auto* found = m_place->window()->findChild<Widget*>(QString::fromLatin1(name));
        if (!found)
            stopBecause(std::string("no widget named ") + name);
        return *found;
    }

    void key(int which, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* target = QApplication::focusWidget();
        ASSERT_NE(target, nullptr);
        ++m_keyActions;
        QTest::keyClick(target, static_cast<Qt::Key>(which), modifiers);
        QCoreApplication::processEvents(); // tiles that came with the choice are shown
    }
    // Each letter goes to whatever has the keyboard by then.
    void keys(const char* letters) {
        for (const char* letter = letters; *letter; ++letter) {
            QWidget* target = QApplication::focusWidget();
            ASSERT_NE(target, nullptr);
            ++m_keyActions;
            QTest::keyClick(target, *letter);
            QCoreApplication::processEvents();
        }
    }
    // Over what stands in the field.
    void typeInto(const char* field, const QString& text) {
        QLineEdit* editor = child<Field>(field).editor();
        editor->setFocus();
        editor->selectAll();
        QTest::keyClick(editor, Qt::Key_Delete);
        typeText(text);
    }

    // Names the customer and presses Enter where no field has it.
    void takeItFor(const char* customer) {
        typeInto("customerName", QString::fromUtf8(customer));
        key(Qt::Key_Escape);
        m_place->setFocus();
        key(Qt::Key_Return);
    }

    std::vector<QString> said() {
        std::vector<QString> words;
        for (Banner* banner : m_place->findChildren<Banner*>())
            if (banner->isVisibleTo(m_place.get()))
                words.push_back(banner->accessibleName());
        return words;
    }
    bool isSaid(const QString& words) {
        return std::ranges::any_of(said(), [&](const QString& line) { return line.contains(words); });
    }

    // Tee, M, Moss with a heron: all but the customer.
    void chooseHeronOnMossTee() { keys("g1s2c1d2"); }

    std::vector<db::OrderLine> orders() {
        return valueOf(file().read([](db::Connection& connection) {
            return db::findOrders(connection, "", db::OrderFilter::All, 10);
        }));
    }

    std::unique_ptr<FairTablePlace> m_place;
    int m_keyActions = 0;
};

} // namespace holdfast::app::test
