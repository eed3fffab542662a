// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a slip asks, in a column that scrolls: parts with a name each, the name that actions give in their
// errors, so that a refusal is said where it belongs.
//
// Reading marks what is wrong and goes on, so that all of it is said at once:
//
//     const auto units = form().whole("units", 1, 5000);
//     const auto reason = form().text("reason");
//     if (!form().isSound())
//         return;

#include "app/slips/pick_list.h"
#include "app/widgets/choice.h"
#include "app/widgets/vertical_scroll.h"
#include "core/trade/dates.h"
#include "core/trade/money.h"
#include "core/trade/result.h"
#include "core/trade/units.h"

#include <QStringList>

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

class QHBoxLayout;

namespace holdfast::app {

class Field;
class FormRow;
class Label;
class LongField;
class Stepper;
class Switch;

class Form : public VerticalScroll {
    Q_OBJECT

public:
    explicit Form(QWidget* parent = nullptr);

    // ── parts, each below the last; the name is also the control's objectName ──
    Field* line(std::string_view name, const QString& label, const QString& text = {});
    // Text longer than a line: below its label, in two lines or more.
    LongField* longLine(std::string_view name, const QString& label, const QString& text = {});
    Field* number(std::string_view name, const QString& label, const QString& unit, const QString& text = {});
    Choice* segments(std::string_view name, const QString& label, const QStringList& words, int chosen = -1);
    Choice* tiles(std::string_view name, const QString& label, Choice::Shape shape,
                  const QVector<ChoiceItem>& items, int chosen = -1);
    PickList* list(std::string_view name, const QString& label, const QVector<PickItem>& items,
                   int chosen = -1);
    Switch* turn(std::string_view name, const QString& words, bool isOn = false);
    // Any other control; without `isFilled` nothing need be done to it.
    void own(std::string_view name, const QString& label, QWidget* control,
             std::function<bool()> isFilled = {});

    // The next two parts are side by side.
    void pair();
    void section(const QString& title);
    Label* note(const QString& words);
    void add(QWidget* widget); // no part

    void optional(std::string_view name);                            // may be left empty
    void alsoNamed(std::string_view name, std::string_view itsPart); // an error of this name is said there
    void setShown(std::string_view name, bool isShown);              // what is not shown is not asked
    void setLabel(std::string_view name, const QString& label);

    // ── reading what was typed ──
    QString text(std::string_view name) const;
    std::int64_t whole(std::string_view name, std::int64_t low, std::int64_t high);
    double decimal(std::string_view name, double low, double high);
    std::optional<double> optionalDecimal(std::string_view name, double low, double high);
    std::optional<std::int64_t> optionalWhole(std::string_view name, std::int64_t low, std::int64_t high);
    Money money(std::string_view name, const Currency& currency);
    Millimetres metres(std::string_view name, Millimetres low, Millimetres high);
    LocalDate date(std::string_view name, LocalDate today);
    std::optional<LocalDate> optionalDate(std::string_view name, LocalDate today);
    Minutes clock(std::string_view name);
    int chosen(std::string_view name); // of segments, tiles or a list; 0 with an error where none is
    bool isOn(std::string_view name) const;

    void clearErrors();
    bool isSound() const { return m_isSound; } // nothing wrong was read since clearErrors()
    // False where the error names no part of the form.
    bool showError(const Error& error);
    void setError(std::string_view name, const QString& words);
    QString errorAt(std::string_view name) const;

    // ── the keyboard ──
    void focusOn(std::string_view name);
    // The first part still to be filled; false where there is none, or the keyboard is there already.
    bool focusFirstToFill();
    bool focusFirst(); // false where there is no part
    // Onward from what has the keyboard; false after the last part.
    bool focusNext();
    void focusFirstError();

signals:
    void edited(); // by the person, any part

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct Part {
        std::string name;
        QString label;
        FormRow* row = nullptr;
        QWidget* control = nullptr;
        std::function<bool()> isFilled;
        bool isOptional = false;
        bool isPlace = false; // made of several places for the keyboard
    };

    Part& addPart(std::string_view name, const QString& label, const QString& labelAbove, QWidget* control);
    Part* find(std::string_view name);
    const Part* find(std::string_view name) const;
    Part& at(std::string_view name);
    void put(QWidget* widget);
    void focusPart(const Part& part);
    void told(std::string_view name); // the person changed it
    template <class T>
    T kept(std::string_view name, const Result<T>& read, T otherwise);

    std::vector<Part> m_parts;
    std::vector<std::pair<std::string, std::string>> m_aliases;
    QHBoxLayout* m_pairRow = nullptr;
    int m_pairLeft = 0;
    bool m_isSound = true;
    bool m_hasEnd = false; // what is left below the parts is taken
};

// A clock time as people type it: "15:00", "9.30", "1730", "9".
Result<Minutes> readClock(const QString& text, const QString& field);

// Text that may be broken inside its overlong words, which would else widen the slip.
QString breakable(const QString& text);

// How many columns of a choice of sizes fit into a slip.
int columnsThatFit(const QVector<ChoiceItem>& sizes);

} // namespace holdfast::app
