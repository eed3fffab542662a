// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/form.h"

#include "app/desk/formats.h"
#include "app/slips/form_row.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "app/widgets/switch.h"
#include "core/trade/assertion.h"

#include <QApplication>
#include <QBoxLayout>
#include <QPlainTextEdit>
#include <QPointer>
#include <QTimer>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kWidestInside = 104; // of a label that is inside its field
constexpr int kRoomAcross = 294;   // for a choice, next to a scroll bar
constexpr int kNarrowestSize = 52; // a tile of a choice of sizes
constexpr int kBesideSize = 14;    // its words' margins
constexpr int kPictureColumns = 3;

QString objectNameOf(std::string_view name) {
    return words(name);
}

} // namespace

int columnsThatFit(const QVector<ChoiceItem>& sizes) {
    qreal widest = kNarrowestSize;
    for (const ChoiceItem& item : sizes)
        widest = std::max(widest,
                          std::max(widthOf(item.text, Type::ListStrong), widthOf(item.second, Type::Small)) +
                              kBesideSize);
    const int count = std::max(1, static_cast<int>(sizes.size()));
    return std::clamp(static_cast<int>((kRoomAcross + kSpace8) / (widest + kSpace8)), 1, count);
}

QString breakable(const QString& text) {
    constexpr int kLongestRun = 24;
    QString broken;
    int run = 0;
    for (const QChar letter : text) {
        run = letter.isSpace() || letter == u'-' ? 0 : run + 1;
        if (run > kLongestRun && !letter.isLowSurrogate() && !letter.isMark()) {
            broken += QChar(0x200b);
            run = 1;
        }
        broken += letter;
    }
    return broken;
}

Form::Form(QWidget* parent)
    : VerticalScroll(parent) {
    column()->setContentsMargins(kSpace16, kSpace12, kSpace16, kSpace12);
    column()->setSpacing(kSpace12);
}

void Form::put(QWidget* widget) {
    if (m_pairLeft > 0) {
        if (m_pairRow == nullptr) {
            m_pairRow = new QHBoxLayout;
            m_pairRow->setSpacing(kSpace8);
            column()->addLayout(m_pairRow);
        }
        m_pairRow->addWidget(widget, 1, Qt::AlignTop);
        if (--m_pairLeft == 0)
            m_pairRow = nullptr;
        return;
    }
    const bool grows = widget->sizePolicy().verticalPolicy() == QSizePolicy::Expanding;
    column()->addWidget(widget, grows ? 1 : 0);
    m_hasEnd = m_hasEnd || grows;
}

Form::Part& Form::addPart(std::string_view name, const QString& label, const QString& labelAbove,
                          QWidget* control) {
    HOLDFAST_ASSERT(find(name) == nullptr);
    control->setObjectName(objectNameOf(name));
    auto* row = new FormRow(labelAbove, control);
    put(row);
    Part part;
    part.name = name;
    part.label = label;
    part.row = row;
    part.control = control;
    m_parts.push_back(std::move(part));
    return m_parts.back();
}

Field* Form::line(std::string_view name, const QString& label, const QString& text) {
    const bool isInside = m_pairLeft == 0 && widthOf(label, Type::Small) <= kWidestInside;
    auto* field = new Field(isInside ? label : QString());
    field->editor()->setAccessibleName(label);
    field->editor()->setObjectName(objectNameOf(name) + QStringLiteral("Editor"));
    field->setText(text);
    Part& part = addPart(name, label, isInside ? QString() : label, field);
    part.isFilled = [field] { return !field->text().trimmed().isEmpty(); };
    connect(field, &Field::edited, this, [this, key = std::string(name)] { told(key); });
    return field;
}

LongField* Form::longLine(std::string_view name, const QString& label, const QString& text) {
    auto* field = new LongField(label);
    field->editor()->setObjectName(objectNameOf(name) + QStringLiteral("Editor"));
    field->setText(text);
    Part& part = addPart(name, label, label, field);
    part.isFilled = [field] { return !field->text().trimmed().isEmpty(); };
    connect(field, &LongField::edited, this, [this, key = std::string(name)] { told(key); });
    return field;
}

Field* Form::number(std::string_view name, const QString& label, const QString& unit, const QString& text) {
    Field* field = line(name, label, text);
    field->setSuffix(unit);
    return field;
}

Choice* Form::segments(std::string_view name, const QString& label, const QStringList& words, int chosen) {
    QVector<ChoiceItem> items;
    for (const QString& word : words)
        items.append(ChoiceItem{.text = word});
    return tiles(name, label, Choice::Shape::Segment, items, chosen);
}

Choice* Form::tiles(std::string_view name, const QString& label, Choice::Shape shape,
                    const QVector<ChoiceItem>& items, int chosen) {
    auto* choice = new Choice(label, shape);
    Part& part = addPart(name, label, label, choice);
    if (shape != Choice::Shape::Segment)
        choice->setColumns(shape == Choice::Shape::Picture ? kPictureColumns : columnsThatFit(items));
    choice->setItems(items);
    choice->setChosen(chosen);
    part.isFilled = [choice] { return choice->chosenAt() >= 0; };
    connect(choice, &Choice::chosen, this, [this, key = std::string(name)] { told(key); });
    return choice;
}

PickList* Form::list(std::string_view name, const QString& label, const QVector<PickItem>& items,
                     int chosen) {
    auto* list = new PickList(label);
    list->setItems(items, chosen);
    Part& part = addPart(name, label, label, list);
    part.isFilled = [list] { return list->currentIndex() >= 0; };
    connect(list, &QComboBox::activated, this, [this, key = std::string(name)] { told(key); });
    return list;
}

Switch* Form::turn(std::string_view name, const QString& words, bool isOn) {
    auto* turned = new Switch(words);
    turned->setText(words);
    turned->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    turned->setChecked(isOn);
    addPart(name, words, {}, turned);
    connect(turned, &QCheckBox::clicked, this, [this, key = std::string(name)] { told(key); });
    return turned;
}

void Form::own(std::string_view name, const QString& label, QWidget* control,
               std::function<bool()> isFilled) {
    Part& part = addPart(name, label, label, control);
    part.isFilled = std::move(isFilled);
    part.isPlace = true;
}

void Form::pair() {
    m_pairLeft = 2;
    m_pairRow = nullptr;
}

void Form::section(const QString& title) {
    if (!m_parts.empty()) {
        column()->addSpacing(kSpace4);
        column()->addWidget(new ThreadLine);
    }
    column()->addWidget((new Label(title, Type::BodyStrong))->wrapped());
}

Label* Form::note(const QString& words) {
    Label* label = (new Label(breakable(words), Type::Small, &Tokens::ink2))->wrapped();
    put(label);
    return label;
}

void Form::add(QWidget* widget) {
    put(widget);
}

// What is left below stays empty, unless a list among the parts takes it.
void Form::showEvent(QShowEvent* event) {
    if (!m_hasEnd)
        column()->addStretch(1);
    m_hasEnd = true;
    VerticalScroll::showEvent(event);
}

Form::Part* Form::find(std::string_view name) {
    return const_cast<Part*>(std::as_const(*this).find(name));
}

const Form::Part* Form::find(std::string_view name) const {
    const auto alias = std::ranges::find(m_aliases, name, &std::pair<std::string, std::string>::first);
    const std::string_view itsPart = alias == m_aliases.end() ? name : std::string_view(alias->second);
    const auto found = std::ranges::find(m_parts, itsPart, &Part::name);
    return found == m_parts.end() ? nullptr : &*found;
}

Form::Part& Form::at(std::string_view name) {
    Part* found = find(name);
    HOLDFAST_ASSERT(found);
    return *found;
}

void Form::optional(std::string_view name) {
    at(name).isOptional = true;
    auto* field = qobject_cast<Field*>(at(name).control);
    if (field && field->editor()->placeholderText().isEmpty())
        field->setPlaceholder(tr("if known"));
}

void Form::alsoNamed(std::string_view name, std::string_view itsPart) {
    m_aliases.emplace_back(name, itsPart);
}

void Form::setShown(std::string_view name, bool isShown) {
    at(name).row->setVisible(isShown);
}

void Form::setLabel(std::string_view name, const QString& label) {
    at(name).label = label;
    at(name).row->setLabel(label);
}

void Form::told(std::string_view name) {
    at(name).row->setError({});
    emit edited();
}

// ── the keyboard ──

void Form::focusPart(const Part& part) {
    QWidget* target = part.control;
    if (part.isPlace && target->focusPolicy() == Qt::NoFocus && target->focusProxy() == nullptr) {
        for (QWidget* inner : target->findChildren<QWidget*>()) {
            if (inner->focusPolicy() & Qt::TabFocus && inner->isEnabled() && inner->isVisibleTo(target)) {
                target = inner;
                break;
            }
        }
    }
    target->setFocus(Qt::TabFocusReason);
    if (auto* field = qobject_cast<Field*>(target))
        field->selectAll();
    else if (auto* longer = qobject_cast<LongField*>(target))
        longer->selectAll();
    // Once its place is known: when the slip has just come, or words of an error have moved it.
    QTimer::singleShot(0, this, [this, row = QPointer<QWidget>(part.row)] {
        if (!row)
            return;
        ensureWidgetVisible(row, 0, kSpace12);
        // A part may be higher than the form.
        if (QWidget* inner = QApplication::focusWidget(); inner != nullptr && row->isAncestorOf(inner))
            ensureWidgetVisible(inner, 0, kSpace12);
    });
}

void Form::focusOn(std::string_view name) {
    focusPart(at(name));
}

bool Form::focusFirstToFill() {
    const QWidget* focused = QApplication::focusWidget();
    for (const Part& part : m_parts) {
        if (part.isOptional || !part.isFilled || part.row->isHidden() || part.isFilled())
            continue;
        if (part.control == focused || part.control->isAncestorOf(focused))
            return false;
        focusPart(part);
        return true;
    }
    return false;
}

bool Form::focusFirst() {
    const auto first = std::ranges::find_if(
        m_parts, [](const Part& part) { return !part.row->isHidden() && part.control->isEnabled(); });
    if (first == m_parts.end())
        return false;
    focusPart(*first);
    return true;
}

bool Form::focusNext() {
    QWidget* focused = QApplication::focusWidget();
    auto part = std::ranges::find_if(m_parts, [&](const Part& each) {
        return focused != nullptr && (each.control == focused || each.control->isAncestorOf(focused));
    });
    if (part == m_parts.end())
        return false;
    // Through all places of the part itself first.
    if (part->isPlace) {
        for (QWidget* next = focused->nextInFocusChain(); part->control->isAncestorOf(next);
             next = next->nextInFocusChain()) {
            if (next->focusPolicy() & Qt::TabFocus && next->isVisible() && next->isEnabled()) {
                next->setFocus(Qt::TabFocusReason);
                return true;
            }
        }
    }
    for (++part; part != m_parts.end(); ++part) {
        if (!part->row->isHidden() && part->control->isEnabled()) {
            focusPart(*part);
            return true;
        }
    }
    return false;
}

void Form::focusFirstError() {
    const auto wrong =
        std::ranges::find_if(m_parts, [](const Part& part) { return !part.row->error().isEmpty(); });
    if (wrong != m_parts.end())
        focusPart(*wrong);
}

} // namespace holdfast::app
