// SPDX-License-Identifier: GPL-3.0-or-later
// Where the parts of the plain controls are and how large; style.cpp paints them.

#include "app/theme/measures.h"
#include "app/theme/style.h"
#include "app/theme/tokens.h"

#include <QFocusFrame>
#include <QPlainTextEdit>
#include <QStyleOption>
#include <QTextEdit>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kScrollBarWidth = 12;
constexpr int kScrollHandleShortest = 32;
constexpr int kIndicatorWidth = 28;
constexpr int kIndicatorHeight = 22;
constexpr int kArrowRoom = 32;
constexpr int kTextPadding = 12;
constexpr int kListRow = 36;
constexpr int kTextMargin = 8;

// − at the left end and + at the right, both square, and the number between them.
QRect stepperRect(const QRect& all, QStyle::SubControl part) {
    const int key = all.height();
    switch (part) {
    case QStyle::SC_SpinBoxDown:
        return {all.left(), all.top(), key, key};
    case QStyle::SC_SpinBoxUp:
        return {all.right() + 1 - key, all.top(), key, key};
    case QStyle::SC_SpinBoxEditField:
        return all.adjusted(key, 0, -key, 0);
    default:
        return all;
    }
}

} // namespace

QRect WorkshopStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                    SubControl subControl, const QWidget* widget) const {
    const QRect all = option->rect;
    if (control == CC_ScrollBar) {
        const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
        if (bar != nullptr) {
            const bool isVertical = bar->orientation == Qt::Vertical;
            const int length = isVertical ? all.height() : all.width();
            const qint64 range = static_cast<qint64>(bar->maximum) - bar->minimum;
            int handle = length;
            if (range > 0) {
                const qint64 wanted = static_cast<qint64>(length) * bar->pageStep / (range + bar->pageStep);
                handle =
                    std::clamp(static_cast<int>(wanted), std::min(kScrollHandleShortest, length), length);
            }
            const int start = sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition,
                                                      length - handle, bar->upsideDown);
            const auto part = [&](int from, int size) {
                return isVertical ? QRect(all.left(), all.top() + from, all.width(), size)
                                  : QRect(all.left() + from, all.top(), size, all.height());
            };
            switch (subControl) {
            case SC_ScrollBarGroove:
                return all;
            case SC_ScrollBarSlider:
                return part(start, handle);
            case SC_ScrollBarSubPage:
                return part(0, start);
            case SC_ScrollBarAddPage:
                return part(start + handle, length - start - handle);
            default:
                return {};
            }
        }
    }
    if (control == CC_ComboBox) {
        switch (subControl) {
        case SC_ComboBoxEditField:
            return all.adjusted(kTextPadding, 1, -kArrowRoom, -1);
        case SC_ComboBoxArrow:
            return {all.right() + 1 - kArrowRoom, all.top(), kArrowRoom - kSpace4, all.height()};
        default:
            break;
        }
    }
    if (control == CC_SpinBox) {
        const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
        const bool hasButtons = spin == nullptr || spin->buttonSymbols != QAbstractSpinBox::NoButtons;
        const int room = hasButtons ? kArrowRoom : kSpace8;
        if (spin != nullptr && spin->buttonSymbols == QAbstractSpinBox::PlusMinus)
            return stepperRect(all, subControl);
        const QRect buttons(all.right() + 1 - kArrowRoom, all.top() + 2, kArrowRoom - kSpace4,
                            all.height() - 4);
        switch (subControl) {
        case SC_SpinBoxEditField:
            return all.adjusted(kTextPadding - 2, 1, -room, -1);
        case SC_SpinBoxUp:
            return hasButtons ? QRect(buttons.left(), buttons.top(), buttons.width(), buttons.height() / 2)
                              : QRect();
        case SC_SpinBoxDown:
            return hasButtons ? QRect(buttons.left(), buttons.top() + buttons.height() / 2, buttons.width(),
                                      buttons.height() - buttons.height() / 2)
                              : QRect();
        case SC_SpinBoxFrame:
            return all;
        default:
            break;
        }
    }
    return QProxyStyle::subControlRect(control, option, subControl, widget);
}

QRect WorkshopStyle::subElementRect(SubElement element, const QStyleOption* option,
                                    const QWidget* widget) const {
    if (element == SE_LineEditContents) {
        const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
        if (frame != nullptr && frame->lineWidth > 0) {
            return option->rect.adjusted(kTextPadding - 2, 1, -(kTextPadding - 2), -1);
        }
    }
    return QProxyStyle::subElementRect(element, option, widget);
}

int WorkshopStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    switch (metric) {
    case PM_ScrollBarExtent:
        return kScrollBarWidth;
    case PM_ScrollBarSliderMin:
        return kScrollHandleShortest;
    case PM_ScrollView_ScrollBarSpacing:
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
    case PM_MenuHMargin:
        return 0;
    case PM_DefaultFrameWidth:
        if (isTextEditor(widget)) {
            return kTextMargin;
        }
        break;
    case PM_IndicatorWidth:
        return kIndicatorWidth;
    case PM_IndicatorHeight:
        return kIndicatorHeight;
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return kIndicatorHeight;
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
        return 10;
    case PM_FocusFrameVMargin:
        return kFocusRoom;
    case PM_ToolTipLabelFrameWidth:
        return kSpace8;
    case PM_TextCursorWidth:
        return 2;
    case PM_FocusFrameHMargin: {
        // Also the side margin of text in lists and tables, which name themselves; the frame of Qt 6.4 does
        // not.
        const bool isOfFrame = widget == nullptr || qobject_cast<const QFocusFrame*>(widget) != nullptr;
        return isOfFrame ? kFocusRoom : kSpace8;
    }
    case PM_HeaderMargin:
        return kSpace8;
    case PM_MenuPanelWidth:
    case PM_MenuVMargin:
        return kSpace4;
    case PM_ButtonIconSize:
    case PM_SmallIconSize:
        return kIcon;
    case PM_LayoutHorizontalSpacing:
    case PM_LayoutVerticalSpacing:
        return kSpace8;
    default:
        break;
    }
    return QProxyStyle::pixelMetric(metric, option, widget);
}

int WorkshopStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                             QStyleHintReturn* returned) const {
    switch (hint) {
    case SH_EtchDisabledText:
    case SH_DitherDisabledText:
    case SH_ComboBox_Popup:
    case SH_ScrollBar_Transient:
    case SH_Widget_Animation_Duration:
    case SH_FocusFrame_Mask: // its corners reach into the widget's rectangle
        return 0;
    case SH_FocusFrame_AboveWidget:
    case SH_ItemView_ShowDecorationSelected:
        return 1;
    case SH_Table_GridLineColor:
        return static_cast<int>(tokens().thread.rgb());
    case SH_SpinBox_ClickAutoRepeatThreshold:
    case SH_ToolTip_WakeUpDelay:
        return 400;
    case SH_SpinBox_ClickAutoRepeatRate:
        return 80;
    default:
        break;
    }
    return QProxyStyle::styleHint(hint, option, widget, returned);
}

QSize WorkshopStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                      const QWidget* widget) const {
    QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
    switch (type) {
    case CT_LineEdit: {
        const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
        if (frame != nullptr && frame->lineWidth > 0) {
            size.setHeight(std::max(size.height(), kTarget));
            size.rwidth() += 2 * kTextPadding;
        }
        return size;
    }
    case CT_SpinBox:
        return {size.width() + kTextPadding, std::max(size.height(), kTarget)};
    case CT_ComboBox:
        return {contents.width() + kTextPadding + kArrowRoom + kSpace4, std::max(contents.height(), kTarget)};
    case CT_PushButton:
        return {std::max(size.width() + kSpace16, 2 * kTarget), std::max(size.height(), kTarget)};
    case CT_CheckBox:
    case CT_RadioButton:
        return {size.width(), std::max(size.height(), kTarget)};
    case CT_ItemViewItem:
    case CT_MenuItem: {
        const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
        if (item != nullptr && item->menuItemType == QStyleOptionMenuItem::Separator) {
            return size;
        }
        const int sign =
            item != nullptr ? kSpace32 : 0; // room for a tick, and between the words and their key
        return {size.width() + sign, std::max(size.height(), kListRow)};
    }
    case CT_HeaderSection:
        return {size.width(), std::max(size.height(), 34)};
    default:
        return size;
    }
}

} // namespace holdfast::app
