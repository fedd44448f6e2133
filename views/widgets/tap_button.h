// A very large button for gloves and darkness: a big word, a line below it and the key that does
// the same.
#pragma once

#include "views/theme/style.h"

#include <QAbstractButton>

namespace rickyard::views {

class TapButton : public QAbstractButton
{
    Q_OBJECT

public:
    explicit TapButton(const QString &label, QWidget *parent = nullptr);

    void setLabel(const QString &label);
    void setSubLabel(const QString &text);
    // Shown in the corner and made the shortcut, unless it is empty.
    void setKey(const QKeySequence &key);
    void setIconName(const QString &name);
    void setKind(ButtonKind kind);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void rename();
    double contentWidth() const;

    QString subLabel_;
    QString keyText_;
    QString iconName_;
    ButtonKind kind_ = ButtonKind::Plain;
};

} // namespace rickyard::views
