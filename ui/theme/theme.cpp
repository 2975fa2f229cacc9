#include "ui/theme/theme.h"
