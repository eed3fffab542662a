// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A slip with its form: the title, what it is about and the parts, which scroll together, and one action at
// the foot, which is always in view. What was typed in a form that was left is in it when it is opened again,
// with a line that says so and clears it.
//
// Ctrl+Enter does the action from anywhere. Enter goes to the next part that is still to be filled and does
// the action when none is left (pressed in an empty part it does so too, and what is missing is said); in a
// long form it goes on part by part and does the action after the last.

#include "app/slips/form.h"
#include "app/slips/slip.h"

namespace holdfast::app {

class Banner;
class Button;
class Label;

class FormSlip : public Slip {
    Q_OBJECT

public:
    FormSlip(ShopDesk& desk, const QString& title, const QString& about, QWidget* parent);

    QString title() const override { return m_title; }
    void begin() override;
    QVariantMap typed() const override;
    void putBack(const QVariantMap& typed) override;
    Form& form() { return *m_form; }
    const Form& form() const { return *m_form; }
    QString refusal() const { return m_refusal; } // said above the action

    // What the action began goes on in the background: the form stays with what was typed until that ends.
    void waitForWork();
    // Well (no reason): then the form is done. Else the reason is said in it. Nothing where it waits for no
    // work.
    void endWork(const QString& reason);

protected:
    // Reads the form and does the action; ends with settle().
    virtual void act() = 0;

    ShopDesk& desk() const { return m_desk; }
    Button* action() const { return m_action; }
    void setAction(const QString& words);
    void setAbout(const QString& about);
    void setLong() { m_isLong = true; } // Enter goes on part by part
    void beginAt(std::string_view name) { m_beginAt = std::string(name); }
    void refuse(const QString& words);
    void submit();

    // Ends the slip, or says what is wrong at the part that the error names.
    template <class T>
    bool settle(const Result<T>& outcome) {
        if (!outcome.ok()) {
            say(outcome.error());
            return false;
        }
        finish();
        return true;
    }
    void say(const Error& error);
    void finish();

    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* makeAsLeft();

    ShopDesk& m_desk;
    QString m_title;
    QString m_refusal;
    std::string m_beginAt;
    QVariantMap m_begunWith;
    Label* m_about = nullptr;
    QWidget* m_asLeft = nullptr;
    Form* m_form = nullptr;
    Banner* m_banner = nullptr;
    Button* m_action = nullptr;
    bool m_isLong = false;
    bool m_isFinished = false;
    bool m_isWaiting = false;
};

} // namespace holdfast::app
