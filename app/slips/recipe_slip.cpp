// SPDX-License-Identifier: GPL-3.0-or-later
// A film's recipe at the press, every number of it, and who compared it with the maker's sheet.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr std::int64_t kLongestDwell = 120; // s
constexpr std::int64_t kLongestTime = 600;

class RecipeSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(RecipeSlip)

public:
    RecipeSlip(ShopDesk& shopDesk, const Film& film, std::optional<SlipName> then, QWidget* parent)
        : FormSlip(shopDesk, tr("Recipe"), words(film.name()), parent)
        , m_film(film.id)
        , m_before(film.recipe)
        , m_then(then) {
        form().note(tr("From the film maker’s own sheet; the program ships none."));
        addNumbers();
        form().section(tr("Confirmed against the maker’s sheet by"));
        m_by = form().line("confirmedBy", tr("By"), m_before ? words(m_before->confirmedBy) : QString());
        form().optional("confirmedBy");
        form().alsoNamed("by", "confirmedBy");
        m_by->setPlaceholder(tr("who compared each number"));
        m_state = form().note({});
        QObject::connect(&form(), &Form::edited, this, [this] { weighConfirmation(); });
        if (m_before)
            beginAt(m_before->isConfirmed() ? "temperature" : "confirmedBy");
        weighConfirmation();
        setLong();
    }

protected:
    void act() override {
        const Recipe recipe = read();
        if (!form().isSound())
            return;
        const bool isOnlyConfirmed =
            m_before && !recipe.confirmedBy.empty() && sameNumbers(recipe, *m_before);
        const auto done = isOnlyConfirmed ? db::confirmRecipe(desk().file(), m_film, recipe.confirmedBy)
                                          : db::enterRecipe(desk().file(), m_film, recipe);
        if (!settle(done) || !m_then)
            return;
        SlipTarget next;
        next.film = m_film;
        emit desk().slipAsked(*m_then, next);
    }

private:
    void addNumbers() {
        const Recipe shown = m_before.value_or(Recipe{});
        const auto seconds = [](Seconds time) { return QString::number(time.count()); };
        form().pair();
        form().number("temperature", tr("Platen"), tr("°C"),
                      m_before ? valueWords(Decimal{shown.temperature.value}) : QString());
        form().number("dwell", tr("Dwell"), tr("s"), m_before ? seconds(shown.dwell) : QString());
        form().segments("pressure", tr("Pressure"), {tr("light"), tr("medium"), tr("firm")},
                        m_before ? static_cast<int>(shown.pressure) : -1);
        form().segments("peel", tr("Peel"), {tr("hot"), tr("warm"), tr("cool")},
                        m_before ? static_cast<int>(shown.peel) : -1);
        form().pair();
        form().number("coolBeforePeel", tr("Wait before the peel"), tr("s"), seconds(shown.coolBeforePeel));
        form().number("preheat", tr("Preheat"), tr("s"), seconds(shown.preheat));
        form().pair();
        form().number("finishFront", tr("Finish, front"), tr("s"), seconds(shown.finishFront));
        form().number("finishBack", tr("Finish, back"), tr("s"), seconds(shown.finishBack));
        form().number("tack", tr("A lower layer, tacked for"), tr("s"), seconds(shown.tack));
    }

    Recipe read() {
        Recipe recipe;
        recipe.temperature = Celsius{form().decimal("temperature", 60, 220)};
        recipe.dwell = Seconds{form().whole("dwell", 1, kLongestDwell)};
        recipe.pressure = static_cast<Pressure>(form().chosen("pressure"));
        recipe.peel = static_cast<Peel>(form().chosen("peel"));
        const auto time = [&](std::string_view name) { return Seconds{form().whole(name, 0, kLongestTime)}; };
        recipe.coolBeforePeel = time("coolBeforePeel");
        recipe.preheat = time("preheat");
        recipe.finishFront = time("finishFront");
        recipe.finishBack = time("finishBack");
        recipe.tack = time("tack");
        recipe.confirmedBy = plain(form().text("confirmedBy"));
        return recipe;
    }

    static bool sameNumbers(Recipe one, Recipe other) {
        one.confirmedBy.clear();
        other.confirmedBy.clear();
        return one == other;
    }

    // A confirmation holds for the numbers it was given for: when one of them is changed, it must be given
    // again.
    void weighConfirmation() {
        const bool isOldName =
            m_before && m_before->isConfirmed() && m_by->text() == words(m_before->confirmedBy);
        if (isOldName && numbersTyped() != m_numbersBefore && !m_numbersBefore.isEmpty())
            m_by->setText({});
        if (m_numbersBefore.isEmpty())
            m_numbersBefore = numbersTyped();
        const bool isConfirmed = !form().text("confirmedBy").isEmpty();
        m_state->setText(isConfirmed
                             ? tr("Each number above is the sheet’s.")
                             : tr("Without a name the recipe stays unconfirmed, and its garments say so."));
        setAction(isConfirmed ? tr("Save and confirm the recipe") : tr("Save the recipe"));
    }

    QStringList numbersTyped() const {
        QStringList typed;
        for (const char* name :
             {"temperature", "dwell", "coolBeforePeel", "preheat", "finishFront", "finishBack", "tack"})
            typed.append(form().text(name));
        for (const char* name : {"pressure", "peel"})
            typed.append(QString::number(form().findChild<Choice*>(QString::fromLatin1(name))->chosenAt()));
        return typed;
    }

    FilmId m_film;
    std::optional<Recipe> m_before;
    std::optional<SlipName> m_then;
    QStringList m_numbersBefore;
    Field* m_by = nullptr;
    Label* m_state = nullptr;
};

} // namespace

Slip* makeRecipe(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto film = filmIn(desk, matter);
    return film ? new RecipeSlip(desk, *film, matter.then, parent) : nullptr;
}

} // namespace holdfast::app
