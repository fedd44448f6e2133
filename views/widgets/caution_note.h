// A safety caution at the place of the act. It never says that something is safe, and it always
// ends with who decides.
#pragma once

#include <QWidget>

namespace rickyard::views {

class TextLabel;

class CautionNote : public QWidget
{
    Q_OBJECT

public:
    explicit CautionNote(const QString &caution, QWidget *parent = nullptr);

    void setCaution(const QString &caution);
    // "Local code and the authority having jurisdiction decide."
    static QString closing();

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    TextLabel *caution_;
    TextLabel *closing_;
};

} // namespace rickyard::views
