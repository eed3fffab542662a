// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/slips_fixture.h"

#include "app/widgets/choice.h"
#include "app/widgets/field.h"

#include <QApplication>
#include <QBoxLayout>
#include <QLineEdit>
#include <QTest>

namespace holdfast::app::test {

namespace {

constexpr QSize kEdge{340, 668}; // as the shell shows it

} // namespace

FormSlip* SlipsFixture::open(SlipName name, const SlipTarget& matter) {
    if (!m_isListening) {
        QObject::connect(&desk(), &ShopDesk::slipAsked, &desk(),
                         [this](SlipName next, const SlipTarget& its) {
                             asked.push_back(next);
                             askedFor = its;
                         });
        QObject::connect(&desk(), &ShopDesk::said, &desk(),
                         [this](const QString& words) { said.push_back(words); });
        m_isListening = true;
    }
    m_isFinished = false;
    m_window = std::make_unique<QWidget>();
    auto* column = new QVBoxLayout(m_window.get());
    column->setContentsMargins(0, 0, 0, 0);
    m_slip = dynamic_cast<FormSlip*>(makeSlip(name, desk(), matter, m_window.get()));
    if (!m_slip)
        return nullptr;
    column->addWidget(m_slip);
    QObject::connect(m_slip, &Slip::finished, m_window.get(), [this] { m_isFinished = true; });
    showWindow(*m_window, kEdge);
    m_slip->begin();
    return m_slip;
}

void SlipsFixture::type(const QString& field, const QString& text) {
    auto* editor = m_slip->findChild<QWidget*>(field + QStringLiteral("Editor"));
    if (!editor)
        stopBecause("no field " + field.toStdString());
    editor->setFocus(Qt::TabFocusReason);
    press(Qt::Key_A, Qt::ControlModifier);
    if (text.isEmpty())
        press(Qt::Key_Delete);
    else
        typeText(text);
}

void SlipsFixture::choose(const QString& part, int place) {
    if (auto* list = m_slip->findChild<PickList*>(part)) {
        list->setFocus(Qt::TabFocusReason);
        press(Qt::Key_Home);
        for (int step = 0; step < place; ++step)
            press(Qt::Key_Down);
        return;
    }
    auto* choice = m_slip->findChild<Choice*>(part);
    if (!choice)
        stopBecause("no choice " + part.toStdString());
    choice->takeFocus();
    press(static_cast<Qt::Key>(Qt::Key_1 + place));
}

void SlipsFixture::turn(const QString& part) {
    m_slip->findChild<QWidget*>(part)->setFocus(Qt::TabFocusReason);
    press(Qt::Key_Space);
}

void SlipsFixture::press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    QWidget* target = QApplication::focusWidget();
    QTest::keyClick(target ? target : m_window.get(), key, modifiers);
}

std::size_t SlipsFixture::entries() {
    return file().recent(10'000).size();
}

} // namespace holdfast::app::test
