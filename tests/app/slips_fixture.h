// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A slip in a window of its own over a real shop, filled by keys.

#include "app/slips/form_slip.h"
#include "tests/app/shop_fixture.h"

#include <QPointer>

#include <memory>

namespace holdfast::app::test {

class SlipsFixture : public ShopFixture {
protected:
    // Null where no slip is made.
    FormSlip* open(SlipName name, const SlipTarget& matter = {});
    FormSlip& slip() { return *m_slip; }
    bool isFinished() const { return m_isFinished; }
    QString errorAt(std::string_view field) { return std::as_const(*m_slip).form().errorAt(field); }

    // As a person does: the field gets the keyboard, what stood there is replaced.
    void type(const QString& field, const QString& text);
    // Of segments, tiles or a list, by its place.
    void choose(const QString& part, int place);
    void turn(const QString& part);
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier); // where the keyboard is
    void submit() { press(Qt::Key_Return, Qt::ControlModifier); }

    std::size_t entries(); // of the journal
    template <class Child>
    Child* find(const QString& name) {
        return m_slip->findChild<Child*>(name);
    }

    // What the slip asked for beside its own action.
    std::vector<SlipName> asked;
    SlipTarget askedFor; // the last of them
    std::vector<QString> said;

    ~SlipsFixture() override { m_window.reset(); }

private:
    std::unique_ptr<QWidget> m_window;
    QPointer<FormSlip> m_slip;
    bool m_isFinished = false;
    bool m_isListening = false;
};

} // namespace holdfast::app::test
