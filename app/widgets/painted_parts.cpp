// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/painted_parts.h"

#include <QAccessibleWidget>
#include <QPointer>
#include <QWidget>

#include <map>

namespace holdfast::app {

namespace {

PaintedParts* partsOf(QObject* object) {
    return dynamic_cast<PaintedParts*>(object);
}

class PartAccess : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    PartAccess(QWidget& widget, int part)
        : m_widget(&widget)
        , m_part(part) {}

    int part() const { return m_part; }

    bool isValid() const override { return m_widget && m_part < parts().partCount(); }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override { return QAccessible::queryAccessibleInterface(m_widget); }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QAccessible::Role role() const override { return parts().partRoles().part; }
    void setText(QAccessible::Text, const QString&) override {}

    QString text(QAccessible::Text kind) const override {
        return isValid() && kind == QAccessible::Name ? parts().partName(m_part) : QString();
    }

    QRect rect() const override {
        const QRect box = parts().partBox(m_part);
        return {m_widget->mapToGlobal(box.topLeft()), box.size()};
    }

    QAccessible::State state() const override {
        QAccessible::State state;
        const bool takesKeys = m_widget->focusPolicy() != Qt::NoFocus;
        const bool isCurrent = takesKeys && parts().currentPart() == m_part;
        state.focusable = takesKeys;
        state.selectable = takesKeys;
        state.selected = isCurrent;
        state.focused = isCurrent && m_widget->hasFocus();
        state.invisible = !m_widget->isVisible();
        state.offscreen = !m_widget->visibleRegion().intersects(parts().partBox(m_part));
        return state;
    }

    void* interface_cast(QAccessible::InterfaceType type) override {
        const bool isPressed = type == QAccessible::ActionInterface && m_widget->focusPolicy() != Qt::NoFocus;
        return isPressed ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }

    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

    void doAction(const QString& action) override {
        if (action == setFocusAction())
            m_widget->setFocus(Qt::OtherFocusReason);
        parts().moveToPart(m_part);
        if (action == pressAction())
            parts().pressPart(m_part);
    }

private:
    PaintedParts& parts() const { return *partsOf(m_widget); }

    QPointer<QWidget> m_widget;
    int m_part;
};

class PaintedAccess : public QAccessibleWidget {
public:
    explicit PaintedAccess(QWidget& widget)
        : QAccessibleWidget(&widget, partsOf(&widget)->partRoles().whole) {}

    ~PaintedAccess() override {
        for (const auto& [part, id] : m_children)
            QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return parts().partCount(); }

    QAccessibleInterface* child(int index) const override {
        if (index < 0 || index >= childCount())
            return nullptr;
        const auto [known, isNew] = m_children.try_emplace(index);
        if (isNew)
            known->second = QAccessible::registerAccessibleInterface(new PartAccess(*widget(), index));
        return QAccessible::accessibleInterface(known->second);
    }

    QAccessibleInterface* childAt(int x, int y) const override {
        const QPoint at = widget()->mapFromGlobal(QPoint(x, y));
        for (int part = 0; part < childCount(); ++part)
            if (parts().partBox(part).contains(at))
                return child(part);
        return nullptr;
    }

    QAccessibleInterface* focusChild() const override {
        return widget()->hasFocus() ? child(parts().currentPart()) : nullptr;
    }

    int indexOfChild(const QAccessibleInterface* child) const override {
        const auto* part = dynamic_cast<const PartAccess*>(child);
        return part ? part->part() : -1;
    }

private:
    PaintedParts& parts() const { return *partsOf(object()); }

    mutable std::map<int, QAccessible::Id> m_children; // as far as they were asked for
};

QAccessibleInterface* accessOf(const QString&, QObject* object) {
    return partsOf(object) ? new PaintedAccess(static_cast<QWidget&>(*object)) : nullptr;
}

} // namespace

PaintedParts::PaintedParts() {
    static const bool isKnown = (QAccessible::installFactory(accessOf), true);
    Q_UNUSED(isKnown)
}

void PaintedParts::sayCurrentPart() {
    auto* widget = dynamic_cast<QWidget*>(this);
    if (!widget->hasFocus() || currentPart() < 0)
        return;
    QAccessibleEvent moved(widget, QAccessible::Focus);
    moved.setChild(currentPart());
    QAccessible::updateAccessibility(&moved);
}

} // namespace holdfast::app
