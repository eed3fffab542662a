// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/typed_values.h"

#include "app/slips/option_list.h"
#include "app/slips/pick_list.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "app/widgets/stepper.h"

#include <QCheckBox>

namespace holdfast::app {

namespace {

// What is chosen later in a form may change what is offered earlier; twice is enough for any of ours, and
// once more for what a chain of them would need.
constexpr int kRounds = 3;

QVariant typedAt(const QWidget& control) {
    if (const auto* keeps = dynamic_cast<const KeepsTyped*>(&control))
        return keeps->typed();
    if (const auto* field = qobject_cast<const Field*>(&control))
        return field->text();
    if (const auto* field = qobject_cast<const LongField*>(&control))
        return field->text();
    if (const auto* list = qobject_cast<const PickList*>(&control))
        return list->currentIndex() < 0 ? QVariant(QString()) : QVariant(list->currentText());
    if (const auto* choice = qobject_cast<const Choice*>(&control))
        return choice->chosenAt() < 0 ? QString() : choice->items()[choice->chosenAt()].text;
    if (const auto* list = qobject_cast<const OptionList*>(&control))
        return list->chosenText();
    if (const auto* turned = qobject_cast<const QCheckBox*>(&control))
        return turned->isChecked();
    if (const auto* stepper = qobject_cast<const Stepper*>(&control))
        return stepper->value();
    return {};
}

void putBackAt(Choice& choice, const QString& text) {
    for (int at = 0; at < choice.items().size(); ++at)
        if (choice.items()[at].text == text && choice.items()[at].isChoosable) {
            choice.setChosen(at);
            emit choice.chosen(at);
            return;
        }
}

void putBackAt(PickList& list, const QString& text) {
    if (const int at = list.findText(text); at >= 0) {
        list.setCurrentIndex(at);
        emit list.activated(at);
    }
}

void putBackAt(QWidget& control, const QVariant& typed) {
    if (auto* keeps = dynamic_cast<KeepsTyped*>(&control))
        keeps->putBack(typed);
    else if (auto* field = qobject_cast<Field*>(&control)) {
        field->setText(typed.toString());
        emit field->edited(typed.toString());
    } else if (auto* longer = qobject_cast<LongField*>(&control)) {
        longer->setText(typed.toString());
        emit longer->edited(typed.toString());
    } else if (auto* list = qobject_cast<PickList*>(&control))
        putBackAt(*list, typed.toString());
    else if (auto* choice = qobject_cast<Choice*>(&control))
        putBackAt(*choice, typed.toString());
    else if (auto* options = qobject_cast<OptionList*>(&control))
        options->choose(typed.toString());
    else if (auto* turned = qobject_cast<QCheckBox*>(&control))
        turned->click();
    else if (auto* stepper = qobject_cast<Stepper*>(&control)) {
        stepper->setValue(typed.toInt());
        emit stepper->stepped(stepper->value());
    }
}

// Down from `widget`, in the order in which things were made; not into what keeps its own.
template <class Visit>
void visitControls(QWidget& widget, const Visit& visit) {
    for (QObject* child : QObjectList(widget.children())) {
        auto* below = qobject_cast<QWidget*>(child);
        if (!below)
            continue;
        const QVariant typed = typedAt(*below);
        if (typed.isValid() && !below->objectName().isEmpty())
            visit(*below, typed);
        else
            visitControls(*below, visit);
    }
}

} // namespace

QVariantMap typedIn(const QWidget& form) {
    QVariantMap typed;
    visitControls(const_cast<QWidget&>(form), [&](QWidget& control, const QVariant& value) {
        typed.insert(control.objectName(), value);
    });
    return typed;
}

void putBackInto(QWidget& form, const QVariantMap& typed) {
    for (int round = 0; round < kRounds; ++round) {
        bool isAsItWas = true;
        visitControls(form, [&](QWidget& control, const QVariant& now) {
            const auto wanted = typed.find(control.objectName());
            if (wanted == typed.end() || *wanted == now)
                return;
            isAsItWas = false;
            putBackAt(control, *wanted);
        });
        if (isAsItWas)
            return;
    }
}

} // namespace holdfast::app
