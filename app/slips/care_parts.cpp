// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/care_parts.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/widgets/label.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

// The steps of both editions of the label standard; a figure that is none of them keeps its own row.
constexpr int kWashSteps[] = {0, 30, 40, 50, 60, 70, 95};
constexpr int kIronSteps[] = {0, 110, 120, 150, 160, 200, 210};

QString inCareParts(const char* text) {
    return QCoreApplication::translate("CareParts", text);
}

// A list of temperatures with what 0 means before them.
struct Steps {
    std::vector<int> celsius;

    template <std::size_t count>
    Steps(const int (&usual)[count], int own)
        : celsius(std::begin(usual), std::end(usual)) {
        if (std::ranges::find(celsius, own) == celsius.end())
            celsius.push_back(own);
        std::ranges::sort(celsius);
    }

    QVector<PickItem> items(const QString& none, const QString& upTo) const {
        QVector<PickItem> items;
        for (const int step : celsius)
            items.append({step == 0 ? none : upTo.arg(step)});
        return items;
    }

    int placeOf(int step) const {
        return static_cast<int>(std::ranges::find(celsius, step) - celsius.begin());
    }
};

int degreesIn(const QString& text) {
    static const QString digits = QStringLiteral("0123456789");
    QString number;
    for (const QChar letter : text)
        if (digits.contains(letter))
            number += letter;
    return number.toInt(); // "no washing": 0
}

QVector<PickItem> listOf(const QStringList& words) {
    QVector<PickItem> items;
    for (const QString& word : words)
        items.append({word});
    return items;
}

CareLimits careNow(const Form& form) {
    const auto list = [&](const char* name) { return form.findChild<PickList*>(QString::fromLatin1(name)); };
    CareLimits care;
    care.washCelsius = degreesIn(list("careWash")->currentText());
    care.agitation = static_cast<Agitation>(list("careAgitation")->currentIndex());
    care.tumble = static_cast<Tumble>(list("careTumble")->currentIndex());
    care.ironCelsius = degreesIn(list("careIron")->currentText());
    care.bleach = static_cast<Bleach>(list("careBleach")->currentIndex());
    care.cleaning = static_cast<Cleaning>(list("careCleaning")->currentIndex());
    return care;
}

QString careText(const CareLimits& care) {
    QStringList lines;
    for (const Sentence& line : careWords(care))
        lines.append(words(line));
    return inCareParts("On the care card: %1.").arg(lines.join(QStringLiteral("; ")));
}

} // namespace

void addCareParts(Form& form, const CareLimits& care) {
    const Steps wash(kWashSteps, care.washCelsius);
    const Steps iron(kIronSteps, care.ironCelsius);
    form.pair();
    form.list("careWash", inCareParts("Washing, up to"),
              wash.items(inCareParts("no washing"), inCareParts("%1 °C")), wash.placeOf(care.washCelsius));
    form.list("careAgitation", inCareParts("Cycle"),
              listOf({inCareParts("by hand"), inCareParts("very mild"), inCareParts("mild"),
                      inCareParts("normal")}),
              static_cast<int>(care.agitation));
    form.pair();
    form.list("careTumble", inCareParts("Tumble drying"),
              listOf({inCareParts("not at all"), inCareParts("low"), inCareParts("normal")}),
              static_cast<int>(care.tumble));
    form.list("careIron", inCareParts("Ironing, up to"),
              iron.items(inCareParts("no ironing"), inCareParts("%1 °C")), iron.placeOf(care.ironCelsius));
    form.list("careBleach", inCareParts("Bleach"),
              listOf({inCareParts("none"), inCareParts("oxygen only"), inCareParts("any")}),
              static_cast<int>(care.bleach));
    // Place 0 to 7 is the set's own number: P counts 1, F 2, wet cleaning 4.
    form.list(
        "careCleaning", inCareParts("Professional cleaning"),
        listOf({inCareParts("none"), inCareParts("solvent P"), inCareParts("solvent F"),
                inCareParts("solvent P or F"), inCareParts("wet cleaning"), inCareParts("solvent P or wet"),
                inCareParts("solvent F or wet"), inCareParts("solvent P, F or wet")}),
        static_cast<int>(care.cleaning));
    Label* said = form.note(careText(care));
    QObject::connect(&form, &Form::edited, said, [&form, said] { said->setText(careText(careNow(form))); });
}

CareLimits readCare(Form& form) {
    for (const char* name :
         {"careWash", "careAgitation", "careTumble", "careIron", "careBleach", "careCleaning"})
        form.chosen(name);
    return form.isSound() ? careNow(form) : CareLimits{};
}

} // namespace holdfast::app
