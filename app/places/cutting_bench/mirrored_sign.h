#pragma once
// Whether the bench is mirrored: in full where there is room, else in a word. It is always in view.

#include "app/theme/tokens.h"

#include <QWidget>

namespace holdfast::app {

class MirroredSign : public QWidget {
    Q_OBJECT

public:
    explicit MirroredSign(QWidget* parent = nullptr);

    void setMirrored(bool isMirrored);
    QString words() const; // as they are shown

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString words(bool inFull) const;
    QString iconName() const;
    int widthFor(bool inFull) const;

    bool m_isMirrored = true;
};

} // namespace holdfast::app
