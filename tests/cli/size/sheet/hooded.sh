boilback size hooded.bath --sheet
